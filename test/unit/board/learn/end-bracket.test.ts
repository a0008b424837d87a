import { strict as assert } from 'node:assert';
import { withoutUnit } from '../../../../server/src/board/learn/propose/said-unit';
import { endBracketOf } from '../../../../server/src/board/learn/words/end-bracket';

describe('the bracket that ends a name', () => {
  it('is found whatever kind it is, with what stands before it', () => {
    assert.deepEqual(endBracketOf('corner[dHz]'), { before: 'corner', inner: 'dHz' });
    assert.deepEqual(endBracketOf('delay ( ms ) '), { before: 'delay', inner: 'ms' });
    assert.deepEqual(endBracketOf('gain (roll) [1/1000]'), { before: 'gain (roll)', inner: '1/1000' });
  });

  it('is none where it stands in another, closes otherwise than it opens, or is not at the end', () => {
    for (const name of ['corner [(Hz)]', 'corner ((Hz))', 'corner (Hz]', 'corner (Hz) two', 'corner ()'])
      assert.equal(endBracketOf(name), null, name);
  });

  it('says the unit of a name', () => {
    assert.deepEqual(withoutUnit('corner [dHz]'), { name: 'corner', unit: 'dHz' });
    assert.deepEqual(withoutUnit('delay (ms)'), { name: 'delay', unit: 'ms' });
    assert.deepEqual(withoutUnit('cutoff_hz'), { name: 'cutoff', unit: 'hz' });
    assert.deepEqual(withoutUnit('corner [dHz] of two'), { name: 'corner [dHz] of two', unit: '' });
  });
});
