import { splitLines } from '../language/split-lines';
import { type LineForm, lineFormOf } from './line-form';
import { groupsOfOne } from './one-group';
import type { Profile, RowFound } from './profile/profile';
import { type FieldText, match } from './template';

/** What one line of a board's text is. */
export type BoardLine =
  | { readonly kind: 'blank' | 'comment' | 'opening' }
  | { readonly kind: 'closing'; readonly count: number | null }
  | { readonly kind: 'heading'; readonly group: FieldText }
  | SettingLine
  /** Nothing that the profile knows: kept, and told. */
  | { readonly kind: 'unknown' };

export interface SettingLine {
  readonly kind: 'setting';
  readonly group: string;
  readonly name: FieldText;
  readonly value: FieldText;
  /** undefined: a setting that the profile does not list. */
  readonly found: RowFound | undefined;
}

/** A line with its text, in the order of the capture. */
export interface PlacedBoardLine {
  readonly number: number;
  readonly text: string;
  readonly line: BoardLine;
}

/** Reads a board's text line by line. Every line comes back as something: nothing is lost. */
export function readBoardLines(profile: Profile, text: string): readonly PlacedBoardLine[] {
  const reader = new LineReader(profile);
  return splitLines(text).map((line, number) => ({ number, text: line.text, line: reader.read(line.text) }));
}

/** Knows the group whose heading came last. */
class LineReader {
  private group = '';

  constructor(private readonly profile: Profile) {}

  read(text: string): BoardLine {
    const line = readLine(this.profile, text, this.group);
    if (line.kind === 'heading') this.group = line.group.text;
    return line;
  }
}

/** One line below the heading of a group; '' where no heading came yet or the board writes none. */
export function readLine(profile: Profile, text: string, group: string): BoardLine {
  const trimmed = text.trim();
  if (trimmed === '') return { kind: 'blank' };
  const form = lineFormOf(profile);
  if (form === null) return { kind: 'unknown' };
  if (form.opening.some((template) => match(template, text) !== null)) return { kind: 'opening' };
  for (const template of form.closing) {
    const fields = match(template, text);
    if (fields === null) continue;
    const count = fields.get('count')?.text;
    return { kind: 'closing', count: count !== undefined && /^\d{1,9}$/.test(count) ? Number(count) : null };
  }
  if (trimmed.startsWith(form.comment)) return { kind: 'comment' };
  const heading = form.heading === null ? undefined : match(form.heading, text)?.get('group');
  if (heading !== undefined) return { kind: 'heading', group: heading };
  return readSetting(profile, form, text, group) ?? { kind: 'unknown' };
}

function readSetting(profile: Profile, form: LineForm, text: string, heading: string): SettingLine | null {
  const fields = match(form.line, text);
  const name = fields?.get('name');
  const value = fields?.get('value');
  if (name === undefined || value === undefined || name.text === '') return null;
  const group = fields?.get('group')?.text ?? heading;
  const own = withoutRemark(value, form, profile.manner.quote);
  return { kind: 'setting', group, name, value: own, found: profile.find(groupsOfOne(group), name.text) };
}

/** The value alone, where the board says something about the setting behind it. */
function withoutRemark(value: FieldText, { remarks }: LineForm, quote: string): FieldText {
  const { text, start } = value;
  // What stands in quotes is the value's own.
  const from = quote !== '' && text.startsWith(quote) ? Math.max(0, text.indexOf(quote, 1)) : 0;
  const places = remarks.map((mark) => text.indexOf(mark, from)).filter((at) => at > 0);
  if (places.length === 0) return value;
  const own = text.slice(0, Math.min(...places)).trimEnd();
  return { start, end: start + own.length, text: own };
}
