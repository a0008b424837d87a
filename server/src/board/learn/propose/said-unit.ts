import { parseUnit, type Unit } from '../../../units/unit';

/** How boards write units for which the language has other letters, in small letters. */
const spellings: ReadonlyMap<string, string> = new Map([
  ['hz', 'Hz'],
  ['khz', 'kHz'],
  ['mhz', 'MHz'],
  ['hertz', 'Hz'],
  ['sec', 's'],
  ['msec', 'ms'],
  ['usec', 'us'],
  ['dps', 'deg/s'],
  ['grad', 'deg'],
  ['degree', 'deg'],
  ['degrees', 'deg'],
  ['°', 'deg'],
  ['°/s', 'deg/s'],
  ['grad/s', 'deg/s'],
  ['°c', 'degC'],
  ['celsius', 'degC'],
  ['pct', '%'],
  ['percent', '%'],
  ['prozent', '%'],
  ['u/min', 'rpm'],
  ['tr/min', 'rpm'],
  ['mah', 'mAh'],
  ['ah', 'Ah'],
  ['ma', 'mA'],
  ['mv', 'mV'],
  ['volt', 'V'],
  ['volts', 'V'],
  ['amp', 'A'],
  ['amps', 'A'],
  ['mw', 'mW'],
  ['bd', 'baud'],
]);

/** The unit that a text says, whatever its case; null where it says none. */
export function saidUnit(text: string): Unit | null {
  const plain = text.trim();
  if (plain === '' || plain.length > 24) return null;
  return parseUnit(spellings.get(plain.toLowerCase()) ?? plain).unit ?? null;
}

/** Words that a name ends in to say its unit, in small letters: those that mean nothing else there. */
const atTheEnd = new Set('hz khz mhz ms us sec dps deg pct percent rpm mah mv ma mw'.split(' '));
/** A letter says a unit where something parts it from the name. */
const partedLetter = /[ _.([-]([VAsmg%])\)?\]?$/;

/** The unit at the end of a name, `cutoff_hz`, `delay (ms)`, and the name without it. */
export function withoutUnit(name: string): { readonly name: string; readonly unit: Unit | null } {
  const [, word = ''] = /(?:^|[^\p{L}]|(?<=\p{Ll})(?=\p{Lu}))(\p{L}{2,7}|%)[)\]]?$/u.exec(name) ?? [];
  const said = atTheEnd.has(word.toLowerCase()) || word === '%' ? word : (partedLetter.exec(name)?.[1] ?? '');
  const rest = said === '' ? name : name.slice(0, name.lastIndexOf(said)).trimEnd();
  // A name that is all unit says no unit: `deg` may be anything.
  return /\p{L}{2}/u.test(rest) && said !== '' ? { name: rest, unit: saidUnit(said) } : { name, unit: null };
}
