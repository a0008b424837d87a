import type { Stated, Stretch } from '../listing';
import { type DecimalMark, numberLook } from '../number-look';
import { rangeIn, wordsApart, wordsIn } from '../range-and-words';
import type { Remark } from '../remark';
import {
  afterBlanks,
  afterWord,
  closing,
  isBlank,
  quotedAt,
  textWithoutQuotes,
  trimmed,
} from '../text/characters';
import type { ListingLine } from '../text/line';
import { couldBeUnit, isKnownUnit } from '../unit-words';
import { isAmount } from '../value-look';
import { firstPlace, literalAt } from './match';
import type { Field, Literal, Template } from './template';

/** Something that may stand behind a value: ` [{remark}]`, ` # {remark}`, ` {unit}`, ` default {default}`. */
export interface BesideForm {
  readonly field: Field;
  readonly open: Literal;
  readonly close: Literal;
  /** The bracket that opens it last; a bracket of its kind in it closes itself. */
  readonly bracket: string | null;
}

/** Templates with several fields say several things: one of each. */
export function besideOf(template: Template): BesideForm | null {
  const [field] = template.fields;
  const [open, close] = template.literals;
  if (field === undefined || open === undefined || close === undefined) return null;
  const last = open.pieces.at(-1);
  const bracket = last?.kind === 'text' ? (last.text.at(-1) ?? '') : '';
  const isPaired = closing.has(bracket) && closing.get(bracket) === firstOf(close);
  return { field, open, close, bracket: isPaired ? bracket : null };
}

function firstOf({ pieces }: Literal): string | undefined {
  const [first] = pieces;
  return first?.kind === 'text' ? first.text[0] : undefined;
}

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

/** Where what a part says ends, and where the part does. */
function endOf(
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

/** What the parts say together of a value; null where there are none. */
export function statedOf(
  line: ListingLine,
  parts: readonly (readonly [Field, Stretch])[],
  value: string,
  { mark, readRemark }: { readonly mark: DecimalMark; readonly readRemark: (remark: string) => Remark },
): Stated | null {
  const [first] = parts;
  if (first === undefined) return null;
  const textOf = (field: Field) => {
    const found = parts.find(([one]) => one === field)?.[1];
    return found === undefined ? null : textWithoutQuotes(line.text.slice(found.start, found.end));
  };
  const remark = parts
    .filter(([field]) => field === 'remark')
    .map(([, { start, end }]) => line.text.slice(start, end));
  const said = remark.map(readRemark);
  const [low, high] = [textOf('low'), textOf('high')];
  const range = rangeIn(textOf('range') ?? '', mark);
  const places = parts.map(([, at]) => line.at(at.start, at.end));
  const unsaid = remark.filter((_, index) => said[index]?.isAll !== true);
  return {
    range:
      low !== null && high !== null
        ? { low, high }
        : range !== null
          ? { low: range.low, high: range.high }
          : (said.find((one) => one.range !== null)?.range ?? null),
    words:
      wordsIn(textOf('words') ?? '') ??
      wordsApart(textOf('words') ?? '', value) ??
      said.find((one) => one.words !== null)?.words ??
      null,
    default: textOf('default') ?? said.find((one) => one.default !== null)?.default ?? null,
    unit: textOf('unit') ?? range?.unit ?? said.find((one) => one.unit !== null)?.unit ?? null,
    remark: unsaid.length === 0 ? null : unsaid.join('; '),
    at: {
      start: Math.min(...places.map(({ start }) => start)),
      end: Math.max(...places.map(({ end }) => end)),
    },
  };
}
