import type { Forms } from '../../../catalog/model/board-forms';
import { headingsAmong } from '../../listing/find/headings';
import type { LineFormData } from '../../listing/forms/compiled';
import { isPresenceName } from '../../listing/forms/presence-name';
import { isSurelyValue } from '../../listing/forms/read-part';
import { readListing } from '../../listing/read-listing';
import { closing, isInWord, isLetterOrDigit } from '../../listing/text/characters';
import type { TaughtKind } from './lesson';

/** Something that a line adds to the forms of its listing. */
export type MoreForms = Partial<Pick<Forms, 'lines' | 'beside' | 'headings' | 'comments'>>;

/** What a line of a kind may add to the forms, the likeliest first. `part`: as in a lesson. */
export function moreFormsFor(as: TaughtKind, text: string, part: string | null): readonly MoreForms[] {
  const line = text.trim();
  if (as === 'comment') return commentMarks(line, part).map((mark) => ({ comments: [mark] }));
  if (as === 'heading') return headingForms(line, part).map((form) => ({ headings: [form] }));
  if (part === null) return settingForms(line);
  const named = splitsOf(part).flatMap(([name, value]) => formsWithBoth(line, name, value));
  return [...formsWithValue(line, part), ...named];
}

/** The ways in which a part may be a name and a value, with an equals sign between them. */
export function splitsOf(part: string): readonly (readonly [name: string, value: string])[] {
  return [...part.matchAll(/=/g)].map(({ index }) => [
    part.slice(0, index).trim(),
    part.slice(index + 1).trim(),
  ]);
}

/** All around the name and the value is the board's; a number before them counts the settings. */
function formsWithBoth(line: string, name: string, value: string): readonly MoreForms[] {
  const nameAt = name === '' ? null : placeOf(line, name, 0);
  const valueAt = value === '' || nameAt === null ? null : placeOf(line, value, nameAt + name.length);
  if (nameAt === null || valueAt === null) return [];
  const lead = withIndex(line.slice(0, nameAt));
  const form = `${lead}{name}${line.slice(nameAt + name.length, valueAt)}{value}`;
  return withRest(form, line.slice(valueAt + value.length));
}

/** With its first number taken for the place of the setting among all. */
function withIndex(lead: string): string {
  const digits = /\d+/.exec(lead);
  if (digits === null) return lead;
  const [{ length }, at] = [digits[0], digits.index];
  return `${lead.slice(0, at).trimEnd()}{index}${lead.slice(at + length).trimStart()}`;
}

const longestMark = 60;

/** Marks, or the word with a mark behind it, that the line begins with; else its own beginning. */
function commentMarks(line: string, part: string | null): readonly string[] {
  if (part !== null) return line.startsWith(part) ? [part] : [];
  const marks = /^[^\p{L}\p{N}\s]+/u.exec(line)?.[0];
  if (marks !== undefined) return [marks, `${marks} `];
  const word = /^[\p{L}\p{N}]+[:!>*|]+/u.exec(line)?.[0];
  return [...(word === undefined ? [] : [word]), line.slice(0, longestMark)];
}

function headingForms(line: string, part: string | null): readonly string[] {
  if (part !== null) {
    const at = line.indexOf(part);
    return at < 0 ? [] : [`${line.slice(0, at)}{group}${line.slice(at + part.length)}`];
  }
  const likely = headingsAmong([{ text: line, leads: true, apart: 'below-blank', isEmpty: false }]);
  const [start, end] = named(line);
  return [...likely, `${line.slice(0, start)}{group}${line.slice(end)}`];
}

/** From the first letter or digit to the last. */
function named(line: string): readonly [start: number, end: number] {
  let [start, end] = [0, line.length];
  while (start < end && !isLetterOrDigit(line[start])) start += 1;
  while (end > start && !isLetterOrDigit(line[end - 1])) end -= 1;
  return [start, end];
}

/** As a listing of this one line would be read; else a name and its value where the line shows which is which. */
function settingForms(line: string): readonly MoreForms[] {
  const alone = readListing(line, null);
  const { lines, beside } = alone.forms;
  const words = line.split(/\s+/);
  const last = words.at(-1) ?? '';
  const isPair = words.length === 2 || (words.length > 2 && isSurelyValue(last, '.'));
  const isOne = alone.settings.length === 1 && alone.settings[0]?.style.kind !== 'presence';
  // Where blanks alone part the two, most words could be either.
  const isMarked = lines.every(({ form }) => !/\{name\}\s+\{value\}/.test(form));
  return [
    ...(isOne && (isMarked || isPair) ? [{ lines, beside }] : []),
    ...(isPair ? formsWithValue(line, last) : []),
    ...(words.length === 1 && isPresenceName(line) ? [{ lines: [{ form: '{name}' }] }] : []),
  ];
}

/** At most so many places of a value are tried. */
const mostPlaces = 6;

/** Where a mark stands before the value, it is the value's first; else its last place is. */
function formsWithValue(line: string, value: string): readonly MoreForms[] {
  const places: number[] = [];
  let at = placeOf(line, value, 0);
  while (at !== null && places.length < mostPlaces) {
    places.push(at);
    at = placeOf(line, value, at + 1);
  }
  const isMarked = (at: number) => /\S/.test(line.slice(endOfName(line.slice(0, at)), at));
  return [...places.filter(isMarked), ...places.filter((at) => !isMarked(at)).reverse()].flatMap((at) =>
    formsAt(line, value, at),
  );
}

function formsAt(line: string, value: string, at: number): readonly MoreForms[] {
  const [before, after] = [line.slice(0, at), line.slice(at + value.length)];
  if (![...before].some(isLetterOrDigit)) {
    const joint = after.slice(
      0,
      [...after].findIndex((one) => !isJoint(one)),
    );
    return joint === '' ? [] : lineForms(`${before}{value}${joint}{name}`).map((form) => ({ lines: [form] }));
  }
  const joint = before.slice(endOfName(before));
  if (joint === '') return [];
  const lead = /^[^\p{L}\p{N}\s"'`_@]+\s+/u.exec(before)?.[0] ?? '';
  return withRest(`${lead}{name}${joint}{value}`, after);
}

/** A form with what stands behind the value: said beside it, or marks that end the line. */
function withRest(start: string, after: string): readonly MoreForms[] {
  const isSaid = [...after].some(isLetterOrDigit);
  return lineForms(isSaid ? start : start + after).flatMap((form) => [
    ...(isSaid ? besideFor(after, form) : []),
    { lines: [form] },
  ]);
}

/** What stands between a name and its value: blanks, and marks that neither of them would begin or end with. */
function isJoint(character: string | undefined): boolean {
  return character !== undefined && !isLetterOrDigit(character) && !/["'`_@]/.test(character);
}

function endOfName(before: string): number {
  let end = before.length;
  while (isJoint(before[end - 1])) end -= 1;
  return end;
}

/** Where blanks alone part a name from its value, either may be of several words. */
function lineForms(form: string): readonly LineFormData[] {
  if (!/\{name\} \{value\}/.test(form)) return [{ form }];
  return (['words', 'before-value', 'word'] as const).map((names) => ({ form, names }));
}

/** What is said behind a value: between brackets, behind a mark, or behind words that a colon ends. */
function besideFor(after: string, form: LineFormData): readonly MoreForms[] {
  return besidesOf(after).map((one) => ({ lines: [form], beside: [one] }));
}

function besidesOf(after: string): readonly string[] {
  const said = after.trim();
  const blank = /^\s/.test(after) ? ' ' : '';
  const closer = closing.get(said[0] ?? '');
  if (closer !== undefined && said.endsWith(closer)) return [`${blank}${said[0]}{remark}${closer}`];
  const mark = /^(?:[^\p{L}\p{N}\s]+|[\p{L} ]{1,30}[:=])/u.exec(said)?.[0];
  if (mark === undefined) return [];
  const start = `${blank}${mark}${/^\s/.test(said.slice(mark.length)) ? ' ' : ''}`;
  return isLetterOrDigit(mark[0]) ? [`${start}{words}`, `${start}{remark}`] : [`${start}{remark}`];
}

/** The first place from one on at which words stand that are no part of longer ones. */
function placeOf(line: string, words: string, from: number): number | null {
  for (let at = line.indexOf(words, from); at >= 0; at = line.indexOf(words, at + 1))
    if (!isInWord(line, words, at)) return at;
  return null;
}
