import { strict as assert } from 'node:assert';
import { sameDimension } from '../../../server/src/units/dimension';
import {
  dimensionNames,
  dimensionPhrase,
  findDimensionName,
} from '../../../server/src/units/dimension-names';
import { readableUnit } from '../../../server/src/units/quantity';
import { unitOf } from '../../../server/src/units/unit';

describe('the everyday name of a dimension', () => {
  for (const { name, phrase, dimension, units, family } of dimensionNames) {
    it(`${phrase} is written only in units that measure it: ${units.join(', ')}`, () => {
      assert.ok(units.length > 0, `${name} has no unit`);
      for (const text of units) {
        const unit = unitOf(text);
        assert.ok(sameDimension(unit.dimension, dimension), `${text} does not measure ${phrase}`);
        assert.equal(unit.family ?? undefined, family, `${text} belongs elsewhere`);
      }
    });
  }

  it('is found by name, and an unknown name finds none (F04)', () => {
    assert.equal(findDimensionName('frequency')?.phrase, 'a frequency');
    for (const name of ['Frequency', '', '__proto__', 'constructor']) {
      assert.equal(findDimensionName(name), undefined);
    }
  });

  it('no name stands twice', () => {
    assert.equal(new Set(dimensionNames.map(({ name }) => name)).size, dimensionNames.length);
  });

  it('makes the phrase of a sentence, also where names share a dimension', () => {
    assert.equal(dimensionPhrase(unitOf('kHz').dimension), 'a frequency');
    assert.equal(dimensionPhrase(unitOf('rpm').dimension), 'a turning rate');
    assert.equal(dimensionPhrase(unitOf('rpm/V').dimension), 'a motor constant');
    assert.equal(dimensionPhrase(unitOf('K').dimension), 'a temperature');
    assert.equal(dimensionPhrase(unitOf('m^5').dimension), 'a quantity in length^5');
  });
});

describe('the unit in which a value reads best', () => {
  const cases: readonly [number, string, string][] = [
    [0.02, 'time', 'ms'],
    [3, 'time', 's'],
    [0.000_25, 'time', 'us'],
    [0.0889, 'length', 'mm'],
    [5_800_000_000, 'frequency', 'GHz'],
    [90, 'frequency', 'Hz'],
    [0, 'time', 'ms'],
    [-0.02, 'time', 'ms'],
    [2, 'no such dimension', ''],
  ];
  for (const [base, name, unit] of cases) {
    it(`${base} of ${name} is shown in "${unit}"`, () => assert.equal(readableUnit(base, name), unit));
  }
});
