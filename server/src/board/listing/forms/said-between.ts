import type { Stretch } from '../listing';
import type { DecimalMark } from '../number-look';
import { readRemark } from '../remark';
import { afterBlanks, closing, isBlank, opening, trimmed } from '../text/characters';
import { isAmount } from '../value-look';
import type { Tail } from './tail';

/** A name and its value without what stands in brackets between them and says something of the value. */
export interface Parted {
  readonly name: Stretch;
  readonly value: Stretch;
  readonly said: Tail['parts'];
}

const mostBrackets = 3;

/**
 * Takes what is said between a name and its value: the brackets that end the name, as in `rate [Hz] = 4`. `isLoose`:
 * only blanks part the two, so that the brackets may as well begin the value, as in `rate (1..8) 4`.
 */
export function saidBetween(
  text: string,
  name: Stretch,
  value: Stretch,
  isLoose: boolean,
  mark: DecimalMark,
): Parted {
  let found: Parted = { name, value, said: [] };
  for (let count = 0; count < mostBrackets; count += 1) {
    const next = endOfName(text, found, mark) ?? (isLoose ? startOfValue(text, found, mark) : null);
    if (next === null) break;
    found = next;
  }
  return found;
}

function endOfName(text: string, { name, value, said }: Parted, mark: DecimalMark): Parted | null {
  const open = opening.get(text[name.end - 1] ?? '');
  if (open === undefined) return null;
  const at = text.lastIndexOf(open, name.end - 1);
  const [start, end] = trimmed(text, name.start, at);
  const inner = { start: at + 1, end: name.end - 1 };
  const isTight = at > 0 && !isBlank(text[at - 1]);
  if (at <= name.start || end <= start || !says(text, inner, isTight, mark)) return null;
  return { name: { start, end }, value, said: [['remark', inner], ...said] };
}

function startOfValue(text: string, { name, value, said }: Parted, mark: DecimalMark): Parted | null {
  const closer = closing.get(text[value.start] ?? '');
  const end = closer === undefined ? -1 : text.indexOf(closer, value.start);
  const rest = end < 0 ? value.end : afterBlanks(text, end + 1, value.end);
  if (rest >= value.end || !isBlank(text[end + 1])) return null;
  const inner = { start: value.start + 1, end };
  const own = { start: rest, end: value.end };
  return says(text, inner, false, mark) ? { name, value: own, said: [...said, ['remark', inner]] } : null;
}

/** Whatever the value is: else its name would be another with another value. */
function says(text: string, inner: Stretch, isTight: boolean, mark: DecimalMark): boolean {
  const said = readRemark(text.slice(inner.start, inner.end), mark);
  // Right behind a word, brackets that say no range are part of it: `CPU(s)`.
  if (isTight) return said.range !== null;
  return [said.range, said.words, said.default, said.unit].some((one) => one !== null);
}

/** Whether what stands in brackets says something of a value: what it may be, was at first, or is counted in. */
export function saysOf(inner: string, value: string, mark: DecimalMark): boolean {
  const said = readRemark(inner, mark);
  if (said.range !== null) return isAmount(value.split(/\s/)[0] ?? '', mark);
  if (said.words !== null) return said.words.includes(value) || inner.includes('|') || /:/.test(inner);
  return said.default !== null || (said.unit !== null && isAmount(value, mark));
}
