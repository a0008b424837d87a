import { strict as assert } from 'node:assert';
import { parseQuantity } from '../../server/src/units/quantity';
import { fromBase, unitOf } from '../../server/src/units/unit';
import { near } from '../support/near';

/** A quantity in another unit. */
function inUnit(text: string, unit: string): number {
  const found = parseQuantity(text);
  assert.ok(found, `${text} is no quantity`);
  assert.equal(found.dimension.key, unitOf(unit).dimension.key, `${text} can't be told in ${unit}`);
  return fromBase(found.value, unitOf(unit));
}

type Cases = readonly (readonly [string, number, string])[];

function equal(cases: Cases): void {
  for (const [given, value, unit] of cases) {
    it(`${given} = ${value} ${unit}`, () => near(inUnit(given, unit), value, 1e-12));
  }
}

describe('SI Brochure, 9th edition (BIPM, 2019), table 7: prefixes', () => {
  equal([
    ['1 GHz', 1e9, 'Hz'],
    ['1 MHz', 1e6, 'Hz'],
    ['1 kHz', 1e3, 'Hz'],
    ['1 hPa', 100, 'Pa'],
    ['1 cm', 1e-2, 'm'],
    ['1 ms', 1e-3, 's'],
    ['1 us', 1e-6, 's'],
    ['1 ns', 1e-9, 's'],
    ['1 mg', 1e-6, 'kg'],
    ['1 uF', 1e-6, 'A*s/V'],
  ]);
});

describe('SI Brochure, 9th edition (BIPM, 2019), table 4: named units in terms of others', () => {
  equal([
    ['1 Hz', 1, 's^-1'],
    ['1 N', 1, 'kg*m*s^-2'],
    ['1 Pa', 1, 'kg*m^-1*s^-2'],
    ['1 W', 1, 'kg*m^2*s^-3'],
    ['1 V', 1, 'kg*m^2*s^-3*A^-1'],
    ['1 ohm', 1, 'kg*m^2*s^-3*A^-2'],
    ['1 V', 1, 'W/A'],
    ['1 ohm', 1, 'V/A'],
  ]);
});

describe('SI Brochure, 9th edition (BIPM, 2019), table 8: units accepted for use with the SI', () => {
  equal([
    ['1 min', 60, 's'],
    ['1 h', 3600, 's'],
    ['1 h', 60, 'min'],
    ['1 deg', Math.PI / 180, 'rad'],
  ]);
});

describe('SI Brochure, 9th edition (BIPM, 2019), section 2.3.1: t/°C = T/K − 273.15', () => {
  const offsets: Cases = [
    ['0 degC', 273.15, 'K'],
    ['273.15 K', 0, 'degC'],
    ['300 K', 26.85, 'degC'],
    ['373.15 K', 100, 'degC'],
    ['0 K', -273.15, 'degC'],
    ['-40 degC', 233.15, 'K'],
  ];
  for (const [given, value, unit] of offsets) {
    it(`${given} = ${value} ${unit}`, () => assert.ok(Math.abs(inUnit(given, unit) - value) < 1e-12 * 300));
  }
});

describe('International yard and pound agreement (1 July 1959): 1 yard = 0.9144 m exactly', () => {
  equal([
    ['36 in', 0.9144, 'm'],
    ['3 ft', 0.9144, 'm'],
    ['1 in', 25.4, 'mm'],
    ['1 ft', 12, 'in'],
    ['3.5 in', 88.9, 'mm'],
    ['5 in', 127, 'mm'],
  ]);
});

describe('International yard and pound agreement (1 July 1959): 1 pound = 0.45359237 kg exactly, 16 ounces', () => {
  equal([
    ['1 lb', 0.45359237, 'kg'],
    ['1 lb', 16, 'oz'],
    ['55 lb', 24.94758035, 'kg'], // 14 CFR 107.3 as told in kilograms
    ['0.55 lb', 249.4758035, 'g'],
    ['3.5 oz', 99.2233309375, 'g'],
  ]);
});

describe('NIST Special Publication 811 (2008), appendix B: temperature in degree Fahrenheit', () => {
  equal([
    ['32 degF', 273.15, 'K'],
    ['212 degF', 100, 'degC'],
    ['59 degF', 15, 'degC'],
    ['-40 degF', -40, 'degC'],
  ]);
});

describe('Turning: 1 revolution = 2π rad (ISO 80000-3:2019, rotation), a minute has 60 s', () => {
  equal([
    ['1 rev', 360, 'deg'],
    ['1 rev', 2 * Math.PI, 'rad'],
    ['60 rpm', 1, 'rev/s'],
    ['1 rpm', 6, 'deg/s'],
    ['30000 rpm', 500, 'rev/s'],
    ['2900 rpm/V', 17_400, 'deg/s/V'],
  ]);
});

/**
 * The definition is 10 log10(P / 1 mW). Round values follow from it exactly; the rest are its own arithmetic to
 * four decimals, with which the limits of ERC Recommendation 70-03 (25 mW is 13.98 dBm) and ETSI EN 300 328
 * (100 mW is 20 dBm) agree.
 */
describe('Decibels over a milliwatt', () => {
  const table: readonly (readonly [string, number])[] = [
    ['1 mW', 0],
    ['10 mW', 10],
    ['20 mW', 13.0103],
    ['25 mW', 13.9794],
    ['50 mW', 16.9897],
    ['100 mW', 20],
    ['200 mW', 23.0103],
    ['250 mW', 23.9794],
    ['400 mW', 26.0206],
    ['500 mW', 26.9897],
    ['600 mW', 27.7815],
    ['800 mW', 29.0309],
    ['1 W', 30],
    ['2 W', 33.0103],
  ];
  for (const [power, level] of table) {
    it(`${power} = ${level} dBm`, () => assert.ok(Math.abs(inUnit(power, 'dBm') - level) < 0.00005));
  }
  const back: readonly (readonly [string, number])[] = [
    ['0 dBm', 1],
    ['14 dBm', 25.1189],
    ['20 dBm', 100],
    ['26 dBm', 398.107],
    ['30 dBm', 1000],
    ['36 dBm', 3981.07],
    ['-1.249 dBm', 0.75],
  ];
  for (const [level, power] of back) {
    it(`${level} = ${power} mW`, () => near(inUnit(level, 'mW'), power, 1.2e-4));
  }
});

describe('Charge and discharge rating: I = C × rated capacity in Ah (definition of the C-rate; common practice)', () => {
  /** What a script's `capacity * rating` comes to. */
  const current = (capacity: string, rating: string): number => {
    const charge = parseQuantity(capacity);
    const rate = parseQuantity(rating);
    return (charge?.value ?? Number.NaN) * (rate?.value ?? Number.NaN);
  };
  const table: readonly (readonly [string, string, number])[] = [
    ['1000 mAh', '1 C', 1],
    ['1000 mAh', '0.1 C', 0.1],
    ['1000 mAh', '0.2 C', 0.2],
    ['550 mAh', '100 C', 55],
    ['1800 mAh', '75 C', 135],
    ['1.8 Ah', '75 C', 135],
  ];
  for (const [capacity, rating, amperes] of table) {
    it(`${capacity} at ${rating} gives ${amperes} A`, () => near(current(capacity, rating), amperes, 1e-12));
  }

  it('0.2 C empties a pack in five hours', () => {
    near(1 / (parseQuantity('0.2 C')?.value ?? Number.NaN), inUnit('5 h', 's'), 1e-12);
  });

  equal([
    ['1 Ah', 3600, 'A*s'],
    ['550 mAh', 1980, 'A*s'],
    ['1 Wh', 3600, 'W*s'],
    ['1 Wh', 1, 'V*Ah'],
  ]);
});

describe('Storage counts in powers of ten (IEC 80000-13:2008: kilo is 1000, kibi is 1024)', () => {
  equal([
    ['1 kB', 1000, 'B'],
    ['1 MB', 1e6, 'B'],
    ['1 GB', 1e9, 'B'],
  ]);
});
