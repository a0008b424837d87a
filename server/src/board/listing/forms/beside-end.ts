import { rangeIn } from '../range-and-words';
import { afterBlanks, afterWord, closing, quotedAt } from '../text/characters';
import type { BesideForm } from './beside-form';
import { firstPlace, literalAt } from './match';
import type { Literal } from './template';

/** Where what a part says ends, and where the part does. */
export function endOf(
  { field, open, close, bracket }: BesideForm,
  text: string,
  start: number,
  to: number,
): [number, number] | null {
  if (bracket !== null) return closedAt(text, bracket, close, start, to);
  if (close.pieces.length > 0) {
    const at = firstPlace(text, close, start, to);
    return at === null ? null : [at.start, at.end];
  }
  if (field === 'range') return endOfRange(text, start, to);
  if (field === 'words') return endOfWords(text, start, to);
  if (field === 'remark' && !isKey(open)) return [to, to];
  const quoted = quotedAt(text, start, to);
  if (quoted !== null) return [quoted.after, quoted.after];
  let end = afterWord(text, start, to);
  if (/[,;]/.test(text[end - 1] ?? '')) end -= 1;
  return end > start ? [end, end] : null;
}

const mostRangeWords = 3;

/** A range of one word, `0..9`, or of three, `0 … 9`. */
function endOfRange(text: string, start: number, to: number): [number, number] | null {
  const ends = wordEnds(text, start, to, mostRangeWords);
  const end = ends
    .reverse()
    .find((one) => rangeIn(text.slice(start, one), '.') ?? rangeIn(text.slice(start, one), ','));
  return end === undefined ? null : [end, end];
}

const mostListed = 64;

/** Words with commas between them, or in one piece. */
function endOfWords(text: string, start: number, to: number): [number, number] | null {
  for (const end of wordEnds(text, start, to, mostListed)) if (text[end - 1] !== ',') return [end, end];
  return null;
}

/** Where the first words from `start` on end. */
function wordEnds(text: string, start: number, to: number, most: number): number[] {
  const ends: number[] = [];
  for (let at = start; at < to && ends.length < most; at = afterBlanks(text, at, to)) {
    at = afterWord(text, at, to);
    ends.push(at);
  }
  return ends;
}

/** A key that ends with a mark, such as `unit=`, has one word, or what is in quotes. */
function isKey({ pieces }: Literal): boolean {
  const last = pieces.at(-1);
  return last?.kind === 'text' && last.text.endsWith('=');
}

function closedAt(
  text: string,
  bracket: string,
  close: Literal,
  start: number,
  to: number,
): [number, number] | null {
  const closer = closing.get(bracket);
  let depth = 1;
  for (let at = start; at < to; at += 1) {
    if (text[at] === bracket) depth += 1;
    else if (text[at] === closer) depth -= 1;
    if (depth > 0) continue;
    const end = literalAt(text, close, at, to);
    return end < 0 ? null : [at, end];
  }
  return null;
}
