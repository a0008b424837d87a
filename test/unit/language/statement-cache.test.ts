import { strict as assert } from 'node:assert';
import { StatementCache } from '../../../server/src/language/statement-cache';

describe('equal lines', () => {
  it('are read once', () => {
    const cache = new StatementCache();
    assert.equal(cache.parse('mass = 212 g'), cache.parse('mass = 212 g'));
    assert.equal(cache.parse('mass = 212 g').text, 'mass = 212 g');
    assert.notEqual(cache.parse('mass = 212 g'), cache.parse('mass =  212 g'));
  });

  it('are remembered through one change of generations and forgotten after two', () => {
    const cache = new StatementCache(2);
    const first = cache.parse('a = 1');
    cache.parse('b = 1');
    cache.parse('c = 1');
    assert.equal(cache.parse('a = 1'), first);
    cache.parse('d = 1');
    cache.parse('e = 1');
    assert.notEqual(cache.parse('a = 1'), first);
    assert.deepEqual(cache.parse('a = 1'), first);
  });

  it('of thousands of characters are not kept: each keystroke in one would be', () => {
    const cache = new StatementCache();
    const line = `name = "${'x'.repeat(5000)}"`;
    assert.notEqual(cache.parse(line), cache.parse(line));
    assert.deepEqual(cache.parse(line), cache.parse(line));
  });
});
