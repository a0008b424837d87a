import type { Stretch, Style } from '../listing';
import { type DecimalMark, numberLook } from '../number-look';
import {
  afterBlanks,
  afterWord,
  isBlank,
  isLetterOrDigit,
  quotedAt,
  quotedFrom,
  trimmed,
} from '../text/characters';
import { flagPairs } from '../value-look';
import type { BesideForm } from './beside-form';
import type { CompiledForms, LineForm } from './compiled';
import { match } from './match';
import { isNameBehind, isPresenceName } from './presence-name';
import { saidBetween } from './said-between';
import { type Tail, tailIn } from './tail';
import type { Field } from './template';

/** A setting in a line: places in the line's text. */
export interface PartRead {
  /** Groups that the line itself names, outermost first. */
  readonly groups: readonly Stretch[];
  readonly name: Stretch;
  /** Its name where the line does not say it, but the heading of a column. */
  readonly called?: string;
  readonly value: Stretch;
  readonly style: Style;
  /** From the value, its quotes included, to the end of all that stands beside it. */
  readonly rest: Stretch;
  /** Whether only blanks part the name from the value: other lines look the same. */
  readonly isLoose: boolean;
  readonly said: Tail['parts'];
}

const longestName = 120;
const mostNameWords = 10;

/** Reads the setting that a form finds in a part of a line; null where there is none. */
export function readPart(
  form: LineForm,
  text: string,
  from: number,
  to: number,
  { besides, saysBetween, mark }: Pick<CompiledForms, 'besides' | 'saysBetween' | 'mark'>,
): PartRead | null {
  if (form.negation !== null) return readPresence(form.negation, form, text, from, to);
  const isGapped = form.isLoose;
  const [start, end] = trimmed(text, from, to);
  const tail = isGapped ? tailBehindName(text, start, end, besides, mark) : null;
  const found = matched(form, text, start, tail?.start ?? end, mark);
  const name = found?.get('name');
  const value = found?.get('value');
  if (found === undefined || found === null || name === undefined || value === undefined) return null;
  if (isGapped && partingMarks.has(text.slice(value.start, value.end))) return null;
  const own = isGapped ? tail : tailIn(text, value.start, value.end, besides, mark);
  const [, valueEnd] = trimmed(text, value.start, isGapped ? value.end : (own?.start ?? value.end));
  const bare = valueEnd > value.start ? { start: value.start, end: valueEnd } : emptyAt(text, value.start);
  const between = saysBetween
    ? saidBetween(text, name, bare, isGapped, mark)
    : { name, value: bare, said: [] };
  const named = withoutQuotes(text, between.name);
  if (!isName(text, named)) return null;
  return {
    groups: form.grouping.flatMap((field) => found.get(field) ?? []),
    name: named,
    ...writtenAt(text, between.value),
    rest: { start: between.value.start, end: isGapped ? Math.max(end, value.end) : value.end },
    isLoose: isGapped,
    said: [...saidInLine(form, found), ...between.said, ...(own?.parts ?? [])],
  };
}

/** What parts a name from its value where it stands between blanks; alone it is no value. */
export const partingMarks: ReadonlySet<string> = new Set([
  '=',
  ':',
  ':=',
  '->',
  '<-',
  '=>',
  '~>',
  '<=',
  '==',
]);

/** Where a value is put that is not there: behind a blank, if one stands there. */
function emptyAt(text: string, start: number): Stretch {
  const at = isBlank(text[start]) ? start + 1 : start;
  return { start: at, end: at };
}

function saidInLine({ saying }: LineForm, found: ReadonlyMap<Field, Stretch>): Tail['parts'] {
  return saying.flatMap((field) => {
    const at = found.get(field);
    return at === undefined || at.start === at.end ? [] : [[field, at] as const];
  });
}

function tailBehindName(
  text: string,
  start: number,
  end: number,
  besides: readonly BesideForm[],
  mark: DecimalMark,
): Tail | null {
  // The first word is the name's: what is said stands behind the second at the earliest.
  const at = afterBlanks(text, afterWord(text, quotedAt(text, start, end)?.after ?? start, end), end);
  return at < end ? tailIn(text, at, end, besides, mark) : null;
}

function matched(
  form: LineForm,
  text: string,
  from: number,
  to: number,
  mark: DecimalMark,
): ReadonlyMap<Field, Stretch> | null {
  const found = match(form.template, text, from, to) ?? withoutValue(form, text, from, to);
  if (found === null || form.names === 'word' || !form.isLoose) return found;
  const [name, value] = [found.get('name'), found.get('value')];
  if (name === undefined || value === undefined) return null;
  const start = Math.min(name.start, value.start);
  const end = Math.max(name.end, value.end);
  const at = valueStart(form, text, start, end, mark);
  if (at <= start) return null;
  const [, nameEnd] = trimmed(text, start, at);
  return new Map([...found, ['name', { start, end: nameEnd }], ['value', { start: at, end }]]);
}

/** Where the value begins that only blanks part from its name; one in quotes ends with them. */
function valueStart(form: LineForm, text: string, start: number, end: number, mark: DecimalMark): number {
  const quoted = quotedAt(text, start, end);
  if (quoted !== null && quoted.after < end && isBlank(text[quoted.after]))
    return afterBlanks(text, quoted.after, end);
  return form.names === 'words' ? lastWord(text, start, end) : firstValue(text, start, end, mark);
}

/**
 * A name in columns with nothing behind it. Where one blank parts the two, blanks must stand at the line's end: a bare
 * name looks the same.
 */
function withoutValue(
  { template }: LineForm,
  text: string,
  from: number,
  to: number,
): ReadonlyMap<Field, Stretch> | null {
  const { fields, literals } = template;
  const [first, between, last] = literals;
  const isPlain =
    fields.length === 2 && fields[0] === 'name' && first?.pieces.length === 0 && last?.pieces.length === 0;
  if (!isPlain || between === undefined || between.pieces.length > 0) return null;
  const isAlone = to === text.length || isBlank(text[to]);
  const name = text.slice(from, to);
  // Where the column goes on with nothing in it, what stands there is a name whatever its marks are.
  const isName = isPresenceName(name) || (isBlank(text[to]) && between.before !== 'blank' && isOneName(name));
  if (!isAlone || !isName) return null;
  if (between.before === 'blank' && !isBlank(text[to])) return null;
  return new Map([
    ['name', { start: from, end: to }],
    ['value', { start: text.length, end: text.length }],
  ]);
}

function isOneName(name: string): boolean {
  return name.length <= longestName && !/\s/.test(name) && /[\p{L}\p{N}]/u.test(name);
}

/** Where the last word begins, or the text in quotes that ends the line. */
function lastWord(text: string, start: number, end: number): number {
  let at = end;
  while (at > start && !isBlank(text[at - 1])) at -= 1;
  for (let place = start; place < at; place += 1) {
    const quoted = isBlank(text[place - 1]) ? quotedAt(text, place, end) : null;
    if (quoted === null) continue;
    if (quoted.after === end) return place;
    place = quoted.after - 1;
  }
  return at;
}

/** Where the first word behind the first one begins that can only be a value; else the last word. */
function firstValue(text: string, start: number, end: number, mark: DecimalMark): number {
  let at = quotedAt(text, start, end)?.after ?? start;
  for (;;) {
    at = afterBlanks(text, afterWord(text, at, end), end);
    if (at >= end) return lastWord(text, start, end);
    if (isSurelyValue(text.slice(at, afterWord(text, at, end)), mark)) return at;
  }
}

const flagWords: ReadonlySet<string> = new Set(flagPairs.flat());

/** Whether a word can hardly be part of a name. */
export function isSurelyValue(word: string, mark: DecimalMark): boolean {
  if (word.length > 200) return true;
  if (/^["'`\u201c\u201e\u00ab[({<]/.test(word) || flagWords.has(word.toLowerCase())) return true;
  return numberLook(word, mark) !== null || /^[+-]?\d/.test(word);
}

/** A stretch of a text without the quotes around it, if it stands in some. */
export function withoutQuotes(text: string, at: Stretch): Stretch {
  const quoted = quotedFrom(text, at.start, at.end);
  return quoted === null ? at : { start: quoted.start, end: quoted.end };
}

/** The value that stands there, and whether it does in quotes. */
export function writtenAt(text: string, at: Stretch): Pick<PartRead, 'value' | 'style'> {
  const quoted = quotedFrom(text, at.start, at.end);
  if (quoted === null) return { value: at, style: { kind: 'plain' } };
  const { start, end, mark } = quoted;
  return { value: { start, end }, style: { kind: 'quoted', mark } };
}

/** Whether a text can be a name at all: short, few words, something to say. */
function isName(text: string, { start, end }: Stretch): boolean {
  if (end <= start || end - start > longestName) return false;
  let words = 1;
  let hasLetter = false;
  for (let at = start; at < end; at += 1) {
    const character = text[at];
    if (isBlank(character) && !isBlank(text[at - 1])) words += 1;
    hasLetter ||= isLetterOrDigit(character);
  }
  return words <= mostNameWords && hasLetter;
}

/** A name that stands alone, perhaps behind a mark that says whether it is on. */
function readPresence(
  negation: string,
  form: LineForm,
  text: string,
  from: number,
  to: number,
): PartRead | null {
  const { affirmation, template } = form;
  const [start, end] = trimmed(text, from, to);
  const off = afterPresenceMark(negation, text, start, end);
  const on = off !== null ? null : afterPresenceMark(affirmation, text, start, end);
  if (affirmation !== '' && (off ?? on) === null) return null;
  const after = off ?? on ?? start;
  const found = match(template, text, after, end)?.get('name');
  if (found === undefined || !isNameBehind(text.slice(found.start, found.end), { affirmation, negation }))
    return null;
  return {
    groups: [],
    name: found,
    // Exactly what is taken away, or put there, to turn it round.
    value: { start, end: after },
    style: { kind: 'presence', negation, ...(affirmation === '' ? {} : { affirmation }) },
    rest: { start: end, end },
    isLoose: true,
    said: [],
  };
}

/** Where the name behind a mark begins; null where the mark does not stand there. */
function afterPresenceMark(written: string, text: string, start: number, end: number): number | null {
  const mark = written.trimEnd();
  if (mark === '' || !text.startsWith(mark, start)) return null;
  const after = afterBlanks(text, start + mark.length, end);
  return (mark === written) === (after === start + mark.length) && after < end ? after : null;
}
