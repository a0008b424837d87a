import { type Dimension, dimension, divided, multiplied, plain, raised, spelledOut } from './dimension';
import { findUnitSymbol } from './unit-table';

/** What a parameter measures: a dimension under its everyday name. */
export interface DimensionName {
  readonly name: string;
  /** As it stands in a sentence: "a frequency". */
  readonly phrase: string;
  readonly dimension: Dimension;
  /** Units in which pilots write it, the commonest first. */
  readonly units: readonly string[];
  /** Set where another name shares the dimension; see `UnitSymbol.family`. */
  readonly family?: string;
  /** A difference between two values: a unit's offset plays no part in it. 5 degC are 5 K. */
  readonly isDifference?: true;
  /** Counted from a zero that somebody chose: two of them have a difference, and no sum. */
  readonly isScale?: true;
}

function of(symbol: string): Dimension {
  const unit = findUnitSymbol(symbol);
  if (unit === undefined) throw new Error(`no unit ${symbol} in the table`);
  return unit.dimension;
}

const angularRate = divided(of('deg'), of('s'));
const angularAcceleration = divided(angularRate, of('s'));

export const dimensionNames: readonly DimensionName[] = [
  { name: 'ratio', phrase: 'a share', dimension: plain, units: ['%'] },
  { name: 'time', phrase: 'a time', dimension: of('s'), units: ['ms', 's', 'us', 'min'] },
  { name: 'length', phrase: 'a length', dimension: of('m'), units: ['mm', 'm', 'in', 'cm'] },
  { name: 'mass', phrase: 'a mass', dimension: of('g'), units: ['g', 'kg', 'oz', 'lb'] },
  { name: 'angle', phrase: 'an angle', dimension: of('deg'), units: ['deg', 'rad'] },
  {
    name: 'angular-rate',
    phrase: 'a turning rate',
    dimension: angularRate,
    units: ['deg/s', 'rpm', 'rad/s'],
  },
  {
    name: 'angular-acceleration',
    phrase: 'a turning acceleration',
    dimension: angularAcceleration,
    units: ['deg/s^2', 'rad/s^2'],
  },
  { name: 'frequency', phrase: 'a frequency', dimension: of('Hz'), units: ['Hz', 'kHz', 'MHz', 'GHz'] },
  {
    name: 'discharge-rating',
    phrase: 'a discharge rating',
    dimension: of('C'),
    units: ['C'],
    family: 'discharge-rating',
  },
  {
    name: 'symbol-rate',
    phrase: 'a line speed',
    dimension: of('baud'),
    units: ['baud'],
    family: 'symbol-rate',
  },
  { name: 'current', phrase: 'a current', dimension: of('A'), units: ['A', 'mA'] },
  { name: 'voltage', phrase: 'a voltage', dimension: of('V'), units: ['V', 'mV'] },
  {
    name: 'resistance',
    phrase: 'a resistance',
    dimension: of('ohm'),
    units: ['mohm', 'ohm', 'kohm', 'mV/A'],
  },
  { name: 'charge', phrase: 'a charge', dimension: of('mAh'), units: ['mAh', 'Ah'] },
  { name: 'capacitance', phrase: 'a capacitance', dimension: of('uF'), units: ['uF'] },
  { name: 'power', phrase: 'a power', dimension: of('W'), units: ['mW', 'W', 'dBm'] },
  { name: 'energy', phrase: 'an energy', dimension: of('Wh'), units: ['Wh'] },
  { name: 'torque', phrase: 'a torque', dimension: multiplied(of('N'), of('m')), units: ['N*m'] },
  { name: 'decibels', phrase: 'a ratio in decibels', dimension: of('dB'), units: ['dB', 'dBi'] },
  {
    name: 'temperature',
    phrase: 'a temperature',
    dimension: of('K'),
    units: ['degC', 'K', 'degF'],
    isScale: true,
  },
  {
    name: 'temperature-difference',
    phrase: 'a temperature difference',
    dimension: of('K'),
    units: ['K', 'degC', 'degF'],
    isDifference: true,
  },
  {
    name: 'motor-constant',
    phrase: 'a motor constant',
    dimension: divided(of('rpm'), of('V')),
    units: ['rpm/V'],
  },
  { name: 'speed', phrase: 'a speed', dimension: divided(of('m'), of('s')), units: ['m/s', 'km/h'] },
  {
    name: 'acceleration',
    phrase: 'an acceleration',
    dimension: divided(of('m'), raised(of('s'), 2)),
    units: ['m/s^2'],
  },
  { name: 'area', phrase: 'an area', dimension: raised(of('m'), 2), units: ['cm^2', 'm^2', 'mm^2'] },
  {
    name: 'inertia',
    phrase: 'a moment of inertia',
    dimension: multiplied(of('kg'), raised(of('m'), 2)),
    units: ['g*m^2', 'kg*m^2'],
  },
  {
    name: 'storage',
    phrase: 'a storage size',
    dimension: dimension({ count: 1 }),
    units: ['MB', 'kB', 'GB', 'B'],
  },
  {
    name: 'proportional-gain',
    phrase: 'a gain on the turning rate',
    dimension: divided(plain, angularRate),
    units: ['%/(deg/s)'],
  },
  {
    name: 'integral-gain',
    phrase: 'a gain on the angle',
    dimension: divided(plain, of('deg')),
    units: ['%/deg'],
  },
  {
    name: 'derivative-gain',
    phrase: 'a gain on the turning acceleration',
    dimension: divided(plain, angularAcceleration),
    units: ['%/(deg/s^2)'],
  },
  { name: 'slew-rate', phrase: 'a rate of change', dimension: divided(plain, of('s')), units: ['%/s'] },
  {
    name: 'levelling-strength',
    phrase: 'a turning rate for each degree of tilt',
    dimension: divided(angularRate, of('deg')),
    units: ['deg/s/deg'],
  },
];

const byName = new Map(dimensionNames.map((one) => [one.name, one]));

export function findDimensionName(name: string): DimensionName | undefined {
  return byName.get(name);
}

/** A dimension for a sentence, "a frequency", by the first name in the table that has it, else spelled out. */
export function dimensionPhrase(given: Dimension): string {
  return dimensionNames.find((one) => one.dimension.key === given.key)?.phrase ?? spelledOut(given);
}
