import { type Dimension, dimension, divided, multiplied, plain, raised } from './dimension';

/** One unit symbol. A value in it is `(value × factor) + offset` in SI, or by decibels above `decibelsAbove`. */
export interface UnitSymbol {
  readonly symbol: string;
  readonly name: string;
  readonly dimension: Dimension;
  readonly factor: number;
  /** Only whole quantities may have an offset: never in products. */
  readonly offset?: number;
  /** Logarithmic: `10^(value/10) × decibelsAbove` in SI. */
  readonly decibelsAbove?: number;
  /** Keeps apart what shares a dimension: a discharge rating is no frequency, a pulse rate no clock. */
  readonly family?: string;
}

const time = dimension({ time: 1 });
const length = dimension({ length: 1 });
const mass = dimension({ mass: 1 });
const angle = dimension({ angle: 1 });
const current = dimension({ current: 1 });
const temperature = dimension({ temperature: 1 });
const bytes = dimension({ count: 1 });
const decibel = dimension({ decibel: 1 });
const frequency = raised(time, -1);
const force = dimension({ mass: 1, length: 1, time: -2 });
const power = dimension({ mass: 1, length: 2, time: -3 });
const energy = multiplied(power, time);
const voltage = divided(power, current);
const resistance = divided(voltage, current);
const charge = multiplied(current, time);
const capacitance = divided(charge, voltage);
const pressure = divided(force, raised(length, 2));
const turn = 2 * Math.PI;

/**
 * Every unit that a script may write. Exact by definition: inch 25.4 mm and foot 12 inches (international
 * yard and pound agreement, 1959), pound 0.45359237 kg and ounce a sixteenth of it (the same), litre and hour as accepted with the SI (SI Brochure, 9th edition, table 8),
 * degree Celsius offset 273.15 K (SI Brochure, section 2.3.1), 32 degF = 0 degC and 212 degF = 100 degC (NIST
 * Special Publication 811, appendix B).
 */
export const unitTable: readonly UnitSymbol[] = [
  { symbol: 's', name: 'second', dimension: time, factor: 1 },
  { symbol: 'ms', name: 'millisecond', dimension: time, factor: 1e-3 },
  { symbol: 'us', name: 'microsecond', dimension: time, factor: 1e-6 },
  { symbol: 'ns', name: 'nanosecond', dimension: time, factor: 1e-9 },
  { symbol: 'min', name: 'minute', dimension: time, factor: 60 },
  { symbol: 'h', name: 'hour', dimension: time, factor: 3600 },
  { symbol: 'm', name: 'metre', dimension: length, factor: 1 },
  { symbol: 'cm', name: 'centimetre', dimension: length, factor: 1e-2 },
  { symbol: 'mm', name: 'millimetre', dimension: length, factor: 1e-3 },
  { symbol: 'km', name: 'kilometre', dimension: length, factor: 1e3 },
  { symbol: 'in', name: 'inch', dimension: length, factor: 0.0254 },
  { symbol: 'ft', name: 'foot', dimension: length, factor: 0.3048 },
  { symbol: 'kg', name: 'kilogram', dimension: mass, factor: 1 },
  { symbol: 'g', name: 'gram', dimension: mass, factor: 1e-3 },
  { symbol: 'mg', name: 'milligram', dimension: mass, factor: 1e-6 },
  { symbol: 'lb', name: 'pound', dimension: mass, factor: 0.45359237 },
  { symbol: 'oz', name: 'ounce', dimension: mass, factor: 0.45359237 / 16 },
  { symbol: 'rad', name: 'radian', dimension: angle, factor: 1 },
  { symbol: 'deg', name: 'degree', dimension: angle, factor: turn / 360 },
  { symbol: 'rev', name: 'revolution', dimension: angle, factor: turn },
  { symbol: 'rpm', name: 'revolution a minute', dimension: divided(angle, time), factor: turn / 60 },
  { symbol: 'Hz', name: 'hertz', dimension: frequency, factor: 1 },
  { symbol: 'kHz', name: 'kilohertz', dimension: frequency, factor: 1e3 },
  { symbol: 'MHz', name: 'megahertz', dimension: frequency, factor: 1e6 },
  { symbol: 'GHz', name: 'gigahertz', dimension: frequency, factor: 1e9 },
  { symbol: 'A', name: 'ampere', dimension: current, factor: 1 },
  { symbol: 'mA', name: 'milliampere', dimension: current, factor: 1e-3 },
  { symbol: 'V', name: 'volt', dimension: voltage, factor: 1 },
  { symbol: 'mV', name: 'millivolt', dimension: voltage, factor: 1e-3 },
  { symbol: 'ohm', name: 'ohm', dimension: resistance, factor: 1 },
  { symbol: 'mohm', name: 'milliohm', dimension: resistance, factor: 1e-3 },
  { symbol: 'kohm', name: 'kilohm', dimension: resistance, factor: 1e3 },
  { symbol: 'Ah', name: 'ampere hour', dimension: charge, factor: 3600 },
  { symbol: 'mAh', name: 'milliampere hour', dimension: charge, factor: 3.6 },
  { symbol: 'uF', name: 'microfarad', dimension: capacitance, factor: 1e-6 },
  { symbol: 'W', name: 'watt', dimension: power, factor: 1 },
  { symbol: 'mW', name: 'milliwatt', dimension: power, factor: 1e-3 },
  { symbol: 'Wh', name: 'watt hour', dimension: energy, factor: 3600 },
  { symbol: 'dBm', name: 'decibel over a milliwatt', dimension: power, factor: 1, decibelsAbove: 1e-3 },
  { symbol: 'dB', name: 'decibel', dimension: decibel, factor: 1 },
  { symbol: 'dBi', name: 'decibel over an even radiator', dimension: decibel, factor: 1 },
  { symbol: 'K', name: 'kelvin', dimension: temperature, factor: 1 },
  { symbol: 'degC', name: 'degree Celsius', dimension: temperature, factor: 1, offset: 273.15 },
  {
    symbol: 'degF',
    name: 'degree Fahrenheit',
    dimension: temperature,
    factor: 5 / 9,
    offset: 459.67 * (5 / 9),
  },
  { symbol: 'N', name: 'newton', dimension: force, factor: 1 },
  { symbol: 'Pa', name: 'pascal', dimension: pressure, factor: 1 },
  { symbol: 'hPa', name: 'hectopascal', dimension: pressure, factor: 100 },
  { symbol: '%', name: 'per cent', dimension: plain, factor: 0.01 },
  {
    symbol: 'C',
    name: 'capacity an hour',
    dimension: frequency,
    factor: 1 / 3600,
    family: 'discharge-rating',
  },
  { symbol: 'B', name: 'byte', dimension: bytes, factor: 1 },
  { symbol: 'kB', name: 'kilobyte', dimension: bytes, factor: 1e3 },
  { symbol: 'MB', name: 'megabyte', dimension: bytes, factor: 1e6 },
  { symbol: 'GB', name: 'gigabyte', dimension: bytes, factor: 1e9 },
  { symbol: 'baud', name: 'symbol a second', dimension: frequency, factor: 1, family: 'symbol-rate' },
];

const bySymbol = new Map(unitTable.map((unit) => [unit.symbol, unit]));

/**
 * Other spellings of a symbol that are accepted without a word. By code: an editor that normalizes text would
 * make one character of the Greek letter and the sign that looks the same.
 */
const spellings = new Map([
  ['\u03bcs', 'us'],
  ['\u03bcF', 'uF'],
  ['\u03a9', 'ohm'],
  ['k\u03a9', 'kohm'],
  ['m\u03a9', 'mohm'],
  ['\u00b0', 'deg'],
  ['\u00b0C', 'degC'],
  ['\u00b0F', 'degF'],
]);

/** Looks one symbol up: `Hz`, `us`, `µs`. Never built from prefixes: what is not in the table is unknown. */
export function findUnitSymbol(symbol: string): UnitSymbol | undefined {
  const letters = symbol.replaceAll('\u00b5', '\u03bc').replaceAll('\u2126', '\u03a9');
  return bySymbol.get(spellings.get(letters) ?? letters);
}
