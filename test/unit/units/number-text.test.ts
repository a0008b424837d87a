import { strict as assert } from 'node:assert';
import fc from 'fast-check';
import { plainNumber, shortNumber, withUnit } from '../../../server/src/units/number-text';

describe('a number as a script writes it', () => {
  const cases: readonly [number, string][] = [
    [0, '0'],
    [-0, '0'],
    [212, '212'],
    [-5, '-5'],
    [0.1 + 0.2, '0.3'],
    [1.005 * 1000, '1005'],
    [0.57 * 100, '57'],
    [64.1 * 1000, '64100'],
    [949.9999999999999, '950'],
    [1 / 3, '0.333333333333'],
    [1e-7, '0.0000001'],
    [1.5e-9, '0.0000000015'],
    [-2.5e-8, '-0.000000025'],
    [123_456_789_012, '123456789012'],
    [1e21, '1000000000000000000000'],
    [-1e22, '-10000000000000000000000'],
  ];
  for (const [value, text] of cases) {
    it(`${String(value)} is ${text}, without an exponent or a trace of binary arithmetic (C06)`, () =>
      assert.equal(plainNumber(value), text));
  }

  it('says so when it is none', () => {
    assert.equal(plainNumber(Number.NaN), 'NaN');
    assert.equal(plainNumber(Number.NEGATIVE_INFINITY), '-Infinity');
  });

  it('holds for any finite number: digits, one point, and back to within twelve digits', () => {
    fc.assert(
      fc.property(fc.double({ noNaN: true, noDefaultInfinity: true }), (value) => {
        const text = plainNumber(value);
        assert.match(text, /^-?\d+(\.\d+)?$/);
        if (Math.abs(value) > 1e-80) {
          assert.ok(Math.abs(Number(text) - value) <= Math.abs(value) * 1e-11, `${value} became ${text}`);
        }
      }),
    );
  });
});

describe('a number for people', () => {
  const cases: readonly [number, string][] = [
    [0, '0'],
    [12, '12'],
    [999_999, '999999'],
    [3.1428, '3.14'],
    [0.012345, '0.0123'],
    [1234.5, '1235'],
    [99.95, '100'],
    [-1234.5678, '-1235'],
    [2_000_000, '2000000'],
    [0.000_000_123_4, '0.000000123'],
  ];
  for (const [value, text] of cases) {
    it(`${value} is shown as ${text}`, () => assert.equal(shortNumber(value), text));
  }

  it('takes as many digits as it is asked for', () => {
    assert.equal(shortNumber(Math.PI, 5), '3.1416');
    assert.equal(shortNumber(12345.678, 6), '12345.7');
  });
});

describe('text with a number that a person typed', () => {
  const cases: readonly [text: string, unit: string, written: string][] = [
    ['54', 'degC', '54 degC'],
    ['-1.5', 'V', '-1.5 V'],
    ['+3', 'dB', '+3 dB'],
    ['54 degF', 'degC', '54 degF'],
    ['2 * idle', '%', '2 * idle'],
    ['3', '', '3'],
    ['', 'V', ''],
  ];
  for (const [text, unit, written] of cases)
    it(`"${text}" in ${unit === '' ? 'no unit' : unit} is written as "${written}"`, () =>
      assert.equal(withUnit(text, unit), written));
});
