import { strict as assert } from 'node:assert';
import fc from 'fast-check';
import { fromBase, isOnScale, isUnitless, parseUnit, toBase, unitOf } from '../../../server/src/units/unit';
import { unitTable } from '../../../server/src/units/unit-table';

describe('a unit', () => {
  it('is read once for each spelling, and the same answer is kept', () => {
    assert.equal(parseUnit('deg/s'), parseUnit('deg/s'));
  });

  it('stays right when very many spellings were asked for', () => {
    for (let count = 0; count < 1200; count += 1)
      assert.ok(parseUnit(`q${'x'.repeat(count % 9)}${count}`).error);
    assert.equal(unitOf('ms').factor, 1e-3);
  });

  const products: readonly [string, string, number][] = [
    ['deg/s', 'rad/s', Math.PI / 180],
    ['rpm', 'rad/s', (2 * Math.PI) / 60],
    ['m/s^2', 'm/s/s', 1],
    ['km/h', 'm/s', 1 / 3.6],
    ['g*m^2', 'kg*m^2', 1e-3],
    ['cm^2', 'm^2', 1e-4],
    ['s^-1', 'Hz', 1],
    ['%/(deg/s)', 's/rad', 0.01 / (Math.PI / 180)],
    ['mV/A', 'ohm', 1e-3],
    ['mAh', 'A*s', 3.6],
    ['Wh', 'W*s', 3600],
    ['V*A', 'W', 1],
    ['N', 'kg*m/s^2', 1],
    ['Pa', 'N/m^2', 1],
    ['((s))', 's', 1],
  ];
  for (const [text, same, factor] of products) {
    it(`${text} measures what ${same} does`, () => {
      const unit = unitOf(text);
      assert.equal(unit.dimension.key, unitOf(same).dimension.key);
      assert.ok(Math.abs(unit.factor / (factor * unitOf(same).factor) - 1) < 1e-12);
    });
  }

  const aliases: readonly [string, string][] = [
    ['\u00b5s', 'us'],
    ['\u03bcs', 'us'],
    ['\u2126', 'ohm'],
    ['\u03a9', 'ohm'],
    ['k\u03a9', 'kohm'],
    ['m\u03a9', 'mohm'],
    ['\u00b0', 'deg'],
    ['\u00b0C', 'degC'],
  ];
  for (const [written, symbol] of aliases) {
    it(`${written} is ${symbol}, never a silent factor of a million (C01)`, () => {
      const { factor, dimension, offset } = unitOf(written);
      const plain = unitOf(symbol);
      assert.deepEqual([factor, dimension.key, offset], [plain.factor, plain.dimension.key, plain.offset]);
    });
  }

  const refused: readonly [string, 'unknown' | 'malformed' | 'whole-only', string, number][] = [
    ['inchy', 'unknown', 'inchy', 0],
    ['gramm', 'unknown', 'gramm', 0],
    ['Hzz', 'unknown', 'Hzz', 0],
    ['m/s2', 'malformed', '2', 3],
    ['m/', 'malformed', '', 2],
    ['/s', 'malformed', '/s', 0],
    ['m//s', 'malformed', '/s', 2],
    ['m^', 'malformed', '^', 1],
    ['m^x', 'malformed', '^x', 1],
    ['%/(deg/s', 'malformed', '', 8],
    ['deg/second', 'unknown', 'second', 4],
    ['degC/s', 'whole-only', 'degC', 0],
    ['W/dBm', 'whole-only', 'dBm', 2],
    ['kkHz', 'unknown', 'kkHz', 0],
    ['mmin', 'unknown', 'mmin', 0],
    [`${'('.repeat(20)}s${')'.repeat(20)}`, 'malformed', '(', 9],
    ['constructor', 'unknown', 'constructor', 0],
    ['__proto__', 'malformed', '__proto__', 0],
  ];
  for (const [text, reason, part, at] of refused) {
    it(`"${text}" is built from nothing and refused at its ${at}th character (C04)`, () => {
      assert.deepEqual(parseUnit(text).error, { reason, text: part, at });
      assert.throws(() => unitOf(text), /is not a unit/);
    });
  }

  it('is minutes for min and millimetres for mm: whole names win over prefixes (C02)', () => {
    assert.equal(unitOf('min').factor, 60);
    assert.equal(unitOf('m').dimension.key, unitOf('mm').dimension.key);
    assert.notEqual(unitOf('min').dimension.key, unitOf('in').dimension.key);
  });

  it('of a temperature counts from a zero of its own, but for the kelvin', () => {
    assert.deepEqual(
      unitTable.filter(({ symbol }) => isOnScale(unitOf(symbol))).map(({ symbol }) => symbol),
      ['degC', 'degF'],
    );
  });

  it('is none for a plain number, and a per cent is one', () => {
    assert.ok(isUnitless(unitOf('')));
    assert.ok(!isUnitless(unitOf('%')));
  });

  it('is never thrown at, whatever the text', () => {
    fc.assert(fc.property(fc.string({ unit: 'binary' }), (text) => void parseUnit(text)));
    const like = fc.string({
      unit: fc.constantFrom('m', 's', '/', '*', '^', '(', ')', '-', '2', '%', 'degC'),
    });
    fc.assert(
      fc.property(like, (text) => {
        const { unit, error } = parseUnit(text);
        assert.ok(unit !== undefined || error.at <= text.length);
      }),
    );
  });
});

describe('a value in a unit', () => {
  for (const { symbol } of unitTable) {
    it(`comes back unchanged from SI: ${symbol}`, () => {
      const unit = unitOf(symbol);
      for (const value of [1, 0.57, 64.1, -12.5]) {
        const back = fromBase(toBase(value, unit), unit);
        assert.ok(
          Math.abs(back - value) < 1e-9 * Math.max(1, Math.abs(unit.offset)),
          `${value} became ${back}`,
        );
      }
    });
  }

  it('of no power at all has no decibels', () => {
    assert.equal(fromBase(0, unitOf('dBm')), Number.NEGATIVE_INFINITY);
  });
});
