import { strict as assert } from 'node:assert';
import { nearestUnits } from '../../../server/src/units/nearest-unit';
import { parseUnit } from '../../../server/src/units/unit';

describe('a unit that was probably meant', () => {
  const cases: readonly [string, readonly string[]][] = [
    ['hz', ['Hz']],
    ['HZ', ['Hz']],
    ['Hzz', ['Hz']],
    ['khz', ['kHz']],
    ['inchy', ['in']],
    ['inches', ['in']],
    ['gramm', ['g']],
    ['m/s2', ['m/s^2']],
    ['deg/s2', ['deg/s^2']],
    ['sec', ['s']],
    ['SEC', ['s']],
    ['mah', ['mAh']],
    ['kv', ['rpm/V']],
    ['KV', ['rpm/V']],
    ['volts', ['V']],
    ['dps', ['deg/s']],
    ['usec', ['us']],
    ['percent', ['%']],
    ['rpms', ['rpm']],
    ['baut', ['baud']],
    ['x', []],
    ['furlong', []],
    ['quiet', []],
    ['wobble/fortnight', []],
    ['constructor', []],
    ['z'.repeat(5000), []],
  ];
  for (const [given, meant] of cases) {
    const shown = given.length > 20 ? 'a very long one' : given;
    it(`${shown}: ${meant.join(' or ') || 'nothing is near'} (C04)`, () =>
      assert.deepEqual(nearestUnits(given), meant));
  }

  it('is always one that can be written', () => {
    for (const given of ['Mhz', 'ma', 'mw', 'KB', 'mb', 'Ms', 'US', 'CM', 'degc', 'rad/ss', '%/s2']) {
      for (const unit of nearestUnits(given)) assert.ok(parseUnit(unit).unit, `${unit} for ${given}`);
      assert.ok(nearestUnits(given).length <= 2);
    }
  });
});
