import type { Stretch } from '../listing';
import { type DecimalMark, numberLook } from '../number-look';
import { rangeIn, wordsIn } from '../range-and-words';
import { afterBlanks, isBlank, quotedAt, textWithoutQuotes, trimmed } from '../text/characters';
import { couldBeUnit, isKnownUnit } from '../unit-words';
import { isAmount } from '../value-look';
import { endOf } from './beside-end';
import type { BesideForm } from './beside-form';
import { literalAt } from './match';
import type { Field, Literal } from './template';

/** Where a value ends, and what is said behind it. */
export interface Tail {
  readonly start: number;
  readonly parts: readonly (readonly [Field, Stretch])[];
}

/** So many places of a line are tried at most: a hostile line has many that look like the start of a tail. */
const mostTries = 24;

/** Finds where the value that begins at `from` ends: before the first place from which on all is beside it. */
export function tailIn(
  text: string,
  from: number,
  to: number,
  besides: readonly BesideForm[],
  mark: DecimalMark,
): Tail | null {
  if (besides.length === 0 || from >= to) return null;
  const quoted = quotedAt(text, from, to);
  const begin = quoted?.after ?? from;
  let tries = 0;
  for (let at = begin; at < to; at += 1) {
    if (isBlank(text[at])) continue;
    const opens = besides.some((beside) => opensAt(beside, text, at, { from, to: at }, to, mark));
    if (!opens) continue;
    const parts = partsFrom(text, at, from, to, besides, mark);
    if (parts !== null && !isPartOfValue(parts, text.slice(from, at), mark)) return { start: at, parts };
    tries += 1;
    if (tries > mostTries) return null;
  }
  return null;
}

const limits: ReadonlySet<Field> = new Set(['low', 'high', 'range']);

/** `channel 5 from 1700 to 2100` says no limits of a number: where they change, the value does. */
function isPartOfValue(parts: Tail['parts'], before: string, mark: DecimalMark): boolean {
  const value = textWithoutQuotes(before.trim());
  return value !== '' && parts.some(([field]) => limits.has(field)) && !isNumeric(value, mark);
}

/** A number, with its unit or without, or several of them. */
function isNumeric(value: string, mark: DecimalMark): boolean {
  return isAmount(value, mark) || /^[^\p{L}@]*[\d)\]}%]$/u.test(value);
}

function partsFrom(
  text: string,
  start: number,
  from: number,
  to: number,
  besides: readonly BesideForm[],
  mark: DecimalMark,
): Tail['parts'] | null {
  const parts: (readonly [Field, Stretch])[] = [];
  let at = start;
  while (at < to) {
    // Between two parts a comma may stand.
    const isComma = parts.length > 0 && /[,;]/.test(text[at] ?? '');
    const value = { from, to: start };
    const next =
      nextPart(text, at, value, to, besides, mark) ??
      (isComma ? nextPart(text, afterBlanks(text, at + 1, to), value, to, besides, mark) : null);
    if (next === null) return null;
    parts.push([next.field, next.at]);
    at = afterBlanks(text, next.end, to);
  }
  return parts;
}

/** Where the value stands whose tail is looked for. */
interface ValueExtent {
  readonly from: number;
  readonly to: number;
}

interface TailPart {
  readonly field: Field;
  readonly at: Stretch;
  readonly end: number;
}

function nextPart(
  text: string,
  at: number,
  value: ValueExtent,
  to: number,
  besides: readonly BesideForm[],
  mark: DecimalMark,
): TailPart | null {
  for (const beside of besides) {
    if (!opensAt(beside, text, at, value, to, mark)) continue;
    const start = afterBlanks(text, literalAt(text, beside.open, at, to), to);
    const end = endOf(beside, text, start, to);
    if (end === null) continue;
    const [inner, after] = end;
    const stretch = trimmed(text, start, inner);
    if (
      fits(beside, text.slice(...stretch), mark) &&
      !(beside.field === 'unit' && isWord(text, stretch, besides))
    )
      return { field: beside.field, at: { start: stretch[0], end: stretch[1] }, end: after };
  }
  return null;
}

/** Where words behind numbers say what those are, a word is no unit that only could be one. */
function isWord(
  text: string,
  [start, end]: readonly [number, number],
  besides: readonly BesideForm[],
): boolean {
  const hasWords = besides.some(({ field, open }) => field === 'remark' && open.pieces.length === 0);
  return hasWords && !isKnownUnit(text.slice(start, end));
}

function opensAt(
  { field, open }: BesideForm,
  text: string,
  at: number,
  value: ValueExtent,
  to: number,
  mark: DecimalMark,
): boolean {
  const isFirst = at === value.from;
  if (!isFirst && open.before !== 'none' && !isBlank(text[at - 1])) return false;
  if (open.pieces.length === 0)
    return (
      !isFirst &&
      ((field !== 'unit' && field !== 'remark') ||
        endsWithNumber(text, value.from, value.to, mark) ||
        endsWithNumber(text, value.from, at, mark))
    );
  const end = literalAt(text, open, at, to);
  if (end < 0) return false;
  // A mark right before a word may begin the value itself; one with a blank behind it ends an empty one.
  return !isFirst || (field === 'remark' && firstIsMark(open) && (end >= to || isBlank(text[end])));
}

function firstIsMark({ pieces }: Literal): boolean {
  const [first] = pieces;
  return first?.kind === 'row' || (first?.kind === 'text' && /^[^\p{L}\p{N}[({<]+$/u.test(first.text));
}

/** Whether a number stands right before `at`. */
function endsWithNumber(text: string, from: number, at: number, mark: DecimalMark): boolean {
  const [start, end] = trimmed(text, from, at);
  if (end - start > 60) return false;
  const last = text.slice(start, end).split(/\s+/).at(-1) ?? '';
  return numberLook(last, mark) !== null || numberLook(text.slice(start, end), mark) !== null;
}

function fits({ field, open }: BesideForm, said: string, mark: DecimalMark): boolean {
  if (field === 'unit') return open.pieces.length > 0 ? said !== '' : isUnit(said);
  if (field === 'range') return rangeIn(said, mark) !== null;
  if (field === 'words') return wordsIn(said) !== null;
  const [first] = open.pieces;
  // `5 %` is no empty remark.
  return said !== '' || (field === 'remark' && !(first?.kind === 'text' && isKnownUnit(first.text)));
}

/** A unit that stands alone behind a number: one known word, or one that could be. */
function isUnit(text: string): boolean {
  return isKnownUnit(text) || couldBeUnit(text);
}
