import { dimensionNames } from '../../../units/dimension-names';
import { countedIn, isPartOfUnit } from '../../meaning/board-units';
import { endBracketOf } from '../words/end-bracket';

const known = new Map<string, boolean>();
const mostKnown = 1000;

/** Whether a text is a unit of anything, or a part of one: `Hz`, `0.1 deg`. */
export function isUnit(text: string): boolean {
  const before = known.get(text);
  if (before !== undefined) return before;
  const made =
    text.length <= 24 &&
    /[\p{L}%\u2030\u00b0]/u.test(text) &&
    dimensionNames.some(({ name }) => countedIn(text, name, '') !== null);
  if (known.size >= mostKnown) known.clear();
  known.set(text, made);
  return made;
}

/** Words that a name ends in to say its unit, in small letters: those that mean nothing else there. */
const atTheEnd = new Set('hz khz mhz ms us sec dps deg pct percent rpm mah mv ma mw'.split(' '));
/** Whether a name is such a word and no more. */
export function isUnitWord(name: string): boolean {
  return atTheEnd.has(name.toLowerCase());
}

/** A letter says a unit where something parts it from the name. */
const partedLetter = /[ _.([-]([VAsmg%])\)?\]?$/;

/** The unit at the end of a name, `cutoff_hz`, `delay (ms)`, and the name without it. */
export function withoutUnit(name: string): { readonly name: string; readonly unit: string } {
  const { before, inner } = endBracketOf(name) ?? { before: '', inner: '' };
  // A unit that is a word, such as `ohm`, tells of what the name speaks.
  const isWord = /^\p{L}+$/u.test(inner) && !isPartOfUnit(inner);
  if (/\p{L}{2}/u.test(before) && !isWord && (isUnit(inner) || /^1\/\d+$/.test(inner)))
    return { name: before, unit: inner };
  const [, word = ''] = /(?:^|[^\p{L}]|(?<=\p{Ll})(?=\p{Lu}))(\p{L}{2,7}|%)[)\]]?$/u.exec(name) ?? [];
  const said = atTheEnd.has(word.toLowerCase()) || word === '%' ? word : (partedLetter.exec(name)?.[1] ?? '');
  const start = said === '' ? name : name.slice(0, name.lastIndexOf(said));
  // What parts the unit from the name is in neither.
  const rest = start
    .trimEnd()
    .replace(/[_.([-]$/, '')
    .trimEnd();
  // A name that is all unit says no unit: `deg` may be anything.
  return /\p{L}{2}/u.test(rest) && said !== '' ? { name: rest, unit: said } : { name, unit: '' };
}
