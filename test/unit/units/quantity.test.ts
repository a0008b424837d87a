import { strict as assert } from 'node:assert';
import { exactText, parseQuantity, quantity, shortText } from '../../../server/src/units/quantity';
import { fromBase, unitOf } from '../../../server/src/units/unit';

function shownIn(text: string, unit: string): string {
  const found = parseQuantity(text);
  return found === undefined ? 'not a quantity' : exactText(found.value, unit);
}

describe('a quantity shown in another unit', () => {
  const cases: readonly [string, string, string][] = [
    ['1.005 kHz', 'Hz', '1005 Hz'],
    ['64.1 kHz', 'Hz', '64100 Hz'],
    ['0.57', '%', '57 %'],
    ['5 min', 's', '300 s'],
    ['250 us', 'ms', '0.25 ms'],
    ['3.5 in', 'mm', '88.9 mm'],
    ['300 K', 'degC', '26.85 degC'],
    ['-40 degC', 'K', '233.15 K'],
    ['550 mAh', 'Ah', '0.55 Ah'],
    ['100 mW', 'dBm', '20 dBm'],
    ['20 dBm', 'mW', '100 mW'],
    ['360 deg', 'rev', '1 rev'],
    ['1 rpm', 'deg/s', '6 deg/s'],
    ['30 \u00b0', 'deg', '30 deg'],
    ['3', '', '3'],
  ];
  for (const [given, unit, text] of cases) {
    it(`${given} is ${text}, to the last digit (C06)`, () => assert.equal(shownIn(given, unit), text));
  }

  it('does not drift when the unit is switched back and forth twenty times (C06)', () => {
    let text = '64.1 kHz';
    for (let turn = 0; turn < 20; turn += 1) text = shownIn(shownIn(text, 'Hz'), 'kHz');
    assert.equal(text, '64.1 kHz');
  });

  it('is short for people', () => {
    assert.equal(shortText(0.123456, 'ms'), '123 ms');
    assert.equal(shortText(1 / 3, '%'), '33.3 %');
    assert.equal(shortText(2 / 3, ''), '0.667');
  });
});

describe('a quantity in the catalogue', () => {
  it('is a number and a unit, with or without a space between', () => {
    for (const text of ['5ms', '5 ms', ' 5   ms ', '5e0 ms', '+5 ms', '5.0 ms']) {
      assert.equal(parseQuantity(text)?.value, 0.005, text);
    }
    assert.equal(parseQuantity('-.5 V')?.value, -0.5);
  });

  it('is nothing else', () => {
    for (const text of ['', 'ms', '5 mss', '5 ms ms', '1,5 V', '0x10 V', 'NaN V', 'auto', '5. V']) {
      assert.equal(parseQuantity(text), undefined, text);
    }
  });

  it('is made from a number and the name of a unit', () => {
    assert.deepEqual(quantity(2, 'kHz'), { value: 2000, dimension: unitOf('Hz').dimension });
    assert.equal(fromBase(quantity(1, unitOf('in')).value, unitOf('mm')), 25.4);
    assert.throws(() => quantity(1, 'parsec'), /not a unit/);
  });
});
