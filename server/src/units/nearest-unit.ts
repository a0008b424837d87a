import { distance } from 'fastest-levenshtein';
import { dimensionNames } from './dimension-names';
import { unitTable } from './unit-table';

const candidates = [
  ...new Set([...unitTable.map((unit) => unit.symbol), ...dimensionNames.flatMap((one) => one.units)]),
];

/** What people write for a unit that the table has under its symbol. */
const habits = new Map([
  ['sec', 's'],
  ['secs', 's'],
  ['second', 's'],
  ['seconds', 's'],
  ['msec', 'ms'],
  ['usec', 'us'],
  ['mins', 'min'],
  ['minutes', 'min'],
  ['degrees', 'deg'],
  ['degree', 'deg'],
  ['volts', 'V'],
  ['volt', 'V'],
  ['v', 'V'],
  ['amps', 'A'],
  ['amp', 'A'],
  ['a', 'A'],
  ['inch', 'in'],
  ['inches', 'in'],
  ['inchy', 'in'],
  ['grams', 'g'],
  ['gram', 'g'],
  ['gramm', 'g'],
  ['mah', 'mAh'],
  ['kv', 'rpm/V'],
  ['KV', 'rpm/V'],
  ['kV', 'rpm/V'],
  ['dps', 'deg/s'],
  ['c', 'C'],
  ['celsius', 'degC'],
  ['fahrenheit', 'degF'],
  ['ounce', 'oz'],
  ['ounces', 'oz'],
  ['pound', 'lb'],
  ['pounds', 'lb'],
  ['lbs', 'lb'],
  ['percent', '%'],
  ['ohms', 'ohm'],
  ['hertz', 'Hz'],
]);

/** The units that a wrong one was probably meant to be, best first, at most two; none when nothing is near. */
export function nearestUnits(given: string): readonly string[] {
  if (given.length > 20) return [];
  const habit = habits.get(given) ?? habits.get(given.toLowerCase());
  if (habit !== undefined) return [habit];
  const powered = given.replace(/([A-Za-z])(\d)/g, '$1^$2');
  if (candidates.includes(powered)) return [powered];
  const sameLetters = candidates.filter((symbol) => symbol.toLowerCase() === given.toLowerCase());
  if (sameLetters.length > 0) return sameLetters.slice(0, 2);
  const most = given.length < 3 ? 0 : given.length < 6 ? 1 : 2;
  return candidates
    .map((symbol) => ({ symbol, far: distance(symbol, given) }))
    .filter(({ symbol, far }) => far <= most && symbol.length > 1)
    .sort((one, other) => one.far - other.far)
    .slice(0, 2)
    .map(({ symbol }) => symbol);
}

/** Whether a name is a unit, but for capital letters: `mHz`, `Ms`. A single letter is a name as good as any. */
export function isSpelledLikeUnit(name: string): boolean {
  return name.length > 1 && unitTable.some(({ symbol }) => symbol.toLowerCase() === name.toLowerCase());
}
