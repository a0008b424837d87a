import assert from 'node:assert/strict';
import { suggestParameters, suggestSections, suggestWord } from '../../../server/src/catalog/suggest';
import { foreignKeys, typosOf } from './misspelt';
import { filledIn, shippedCatalog } from './shipped';

function first(path: string, section = ''): string | undefined {
  return suggestParameters(shippedCatalog(), path, section)[0]?.path;
}

describe('did you mean, for a parameter', () => {
  const slips = [
    ['gyro.filter.1.cutof', 'gyro.filter.1.cutoff'],
    ['stick.throtle.curve', 'stick.throttle.curve'],
    ['throttle.stick.curve', 'stick.throttle.curve'],
    ['stickthrottle.curve', 'stick.throttle.curve'],
    ['stick-throttle-curve', 'stick.throttle.curve'],
    ['Stick.Throttle.Curve', 'stick.throttle.curve'],
    ['power.warn_cell', 'power.warn-cell'],
    ['power.cell-warn', 'power.warn-cell'],
    ['pack.sprint.cels', 'pack.sprint.cells'],
    ['pakc.sprint.cells', 'pack.sprint.cells'],
    ['pack.sprintcells', 'pack.sprint.cells'],
    ['cells.pack.sprint', 'pack.sprint.cells'],
    ['switch.arn.channel', 'switch.arm.channel'],
    ['overlay.cell-votlage.palce', 'overlay.cell-voltage.place'],
    ['gyro.filter.1x.centre', 'gyro.filter.1.centre'],
    ['pack.cells', 'pack.<name>.cells'],
    ['stick.hover-point', 'stick.throttle.hover-point'],
  ] as const;
  for (const [written, meant] of slips) {
    it(`${written}: ${meant}`, () => assert.equal(first(written), meant));
  }

  it('offers nothing for names that are near to none', () => {
    const unrelated = [
      'gyro.highpass',
      'x',
      'foo.bar',
      '',
      '.',
      'constructor',
      '__proto__.name',
      'gyro.filter.99.centre',
    ];
    for (const path of unrelated) assert.deepEqual(suggestParameters(shippedCatalog(), path, ''), [], path);
  });

  it('says that a name is known elsewhere, and what to write where it can be written', () => {
    const [kv] = suggestParameters(shippedCatalog(), 'pack.sprint.kv', 'pack.sprint');
    assert.deepEqual([kv?.path, kv?.why, kv?.written], ['motor.kv', 'section', null]);
    const [whole] = suggestParameters(shippedCatalog(), 'motor.gyro.rate', 'motor');
    assert.deepEqual([whole?.path, whole?.why, whole?.written], ['gyro.rate', 'section', null]);
    const [twice] = suggestParameters(shippedCatalog(), 'gyro.gyro.rate', 'gyro');
    assert.deepEqual([twice?.path, twice?.written], ['gyro.rate', 'rate']);
  });

  it('gives the rest of the name below the open section', () => {
    const [found] = suggestParameters(shippedCatalog(), 'pack.sprint.capasity', 'pack.sprint');
    assert.deepEqual([found?.path, found?.written], ['pack.sprint.capacity', 'capacity']);
  });

  it('knows what the trade calls a setting', () => {
    let told = 0;
    for (const known of shippedCatalog().parameters.values()) {
      for (const phrase of known.parameter.alsoCalled) {
        const section = filledIn(known.name).split('.').slice(0, -1).join('.');
        const path = `${section}.${phrase.toLowerCase().replace(/[^a-z0-9]+/g, '-')}`;
        if (shippedCatalog().parameter(path) !== undefined) continue;
        const names = suggestParameters(shippedCatalog(), path, section).map((one) => one.known.name);
        if (names.includes(known.name)) told += 1;
        else assert.fail(`${path} does not lead to ${known.name} but to ${names.join(', ') || 'nothing'}`);
      }
    }
    assert.ok(told >= 100, `${told} phrases`);
  });

  it('gives the right name first for at least 95 of 100 one-letter slips', function () {
    this.timeout(60_000);
    let asked = 0;
    const missed: string[] = [];
    for (const [index, name] of [...shippedCatalog().parameters.keys()].entries()) {
      for (const typo of typosOf(filledIn(name), index)) {
        if (shippedCatalog().parameter(typo) !== undefined) continue;
        asked += 1;
        const [best] = suggestParameters(shippedCatalog(), typo, '');
        if (best?.known.name !== name) missed.push(`${typo} (${name}): ${best?.path ?? 'nothing'}`);
      }
    }
    assert.ok(asked > 5000, `${asked} slips`);
    const share = 1 - missed.length / asked;
    assert.ok(share >= 0.95, `${share} of ${asked}; missed\n${missed.slice(0, 60).join('\n')}`);
  });

  it('takes at most 2 of 50 keys of other trades for one of ours', () => {
    assert.equal(foreignKeys.length, 50);
    const hits = foreignKeys.flatMap(([section, key]) => {
      const path = section === '' ? key : `${section}.${key}`;
      const found = suggestParameters(shippedCatalog(), path, section);
      return found.length === 0 ? [] : [`${path}: ${found[0]?.path}`];
    });
    assert.ok(hits.length <= 2, hits.join('\n'));
  });
});

describe('did you mean, for a section', () => {
  const slips = [
    ['stick.throtle', 'stick.throttle'],
    ['gryo', 'gyro'],
    ['pak.sprint', 'pack.sprint'],
    ['swtich.arm', 'switch.arm'],
    ['switch.amr', 'switch.arm'],
    ['signalloss', 'signal-loss'],
  ] as const;
  for (const [written, meant] of slips) {
    it(`${written}: ${meant}`, () => assert.equal(suggestSections(shippedCatalog(), written)[0], meant));
  }

  it('offers nothing for one that is near to none', () => {
    for (const path of ['oven', 'x', 'kettle.lid'])
      assert.deepEqual(suggestSections(shippedCatalog(), path), [], path);
  });
});

describe('did you mean, for a word', () => {
  const words = ['butterworth', 'first-order', 'off', 'on', 'freestyle', 'race'];

  it('offers the nearest words, best first', () => {
    assert.deepEqual(suggestWord(words, 'buterworth'), ['butterworth']);
    assert.deepEqual(suggestWord(words, 'Freestlye'), ['freestyle']);
    assert.deepEqual(suggestWord(words, 'order-first'), ['first-order']);
    assert.deepEqual(suggestWord(words, 'of'), ['off', 'on']);
  });

  it('offers nothing for another word', () => {
    for (const given of ['yes', 'second-order', 'a', '', 'b'.repeat(5000)])
      assert.deepEqual(suggestWord(words, given), [], given);
  });
});
