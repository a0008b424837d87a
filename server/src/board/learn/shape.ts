import type { FieldText } from '../template';
import { compileTemplate, match, type Template } from '../template';
import { bestLayout, type Layout } from './layout';
import { logicalLines, longestLine } from './logical-lines';
import { isName, isQuoted, type Look, valueLook } from './looks';
import { cutRemark, type Remark, readRemark } from './remarks';

/** A setting of a listing whose form nobody told. */
export interface LearnedSetting {
  readonly group: string;
  readonly name: string;
  readonly value: string;
  readonly look: Exclude<Look, null>;
  readonly remark: Remark | null;
}

export type LearnedLine =
  | { readonly kind: 'setting'; readonly number: number; readonly setting: LearnedSetting }
  | { readonly kind: 'heading'; readonly number: number; readonly group: string }
  | { readonly kind: 'blank' | 'comment' | 'unknown'; readonly number: number };

/** What a listing looks like. */
export interface LearnedShape {
  /** The template of its settings lines; null: none was found. */
  readonly line: string | null;
  readonly heading: string | null;
  readonly comment: string;
  readonly remarks: readonly string[];
  readonly quote: '' | '"' | "'";
  readonly decimal: '.' | ',';
  readonly lines: readonly LearnedLine[];
  /** Settings in their order, each name once: the last of those that stand there again. */
  readonly settings: readonly LearnedSetting[];
  /** Share of the lines that are no blank, comment or heading and could be read as settings. */
  readonly understood: number;
}

/** A listing longer than this is none. */
const longestListing = 10_000_000;

/** Finds out what settings lines of a text look like, and reads them. Costs as much as the text is long. */
export function learnShape(text: string): LearnedShape {
  const logical = logicalLines(text.slice(0, longestListing));
  const trimmed = logical.map((line) => ({ number: line.number, text: line.text.trim() }));
  const usable = trimmed.filter(
    (line) => line.text !== '' && line.text.length <= longestLine && !noise.test(line.text),
  );
  const layout = bestLayout(usable.map((line) => line.text));
  const made =
    layout === null
      ? null
      : compileTemplate(layout.template, ['name', 'value'], ['group', 'name', 'value', 'index']);
  const template = made?.kind === 'template' ? made.template : null;
  const reader = new Reader(template, layout);
  const first = trimmed.map(({ number, text: line }) => ({ number, text: line, setting: reader.read(line) }));
  const others = first
    .filter((line) => line.setting === null && line.text !== '' && !noise.test(line.text))
    .map((line) => line.text);
  const prefix = layout?.prefix ?? '';
  // What is closed by a mark as well is a heading for sure; what only begins with one may be a comment.
  const closed = headingOf(first, prefix, (form) => !form.endsWith('}'));
  const comment = commentMark(
    others.filter((line) => closed === null || match(closed.template, line) === null),
    prefix,
  );
  const heading = closed ?? headingOf(first, prefix, (form) => !form.startsWith(comment));
  const lines = first.map((line) => classified(line, comment, heading));
  const grouped = heading === null ? lines : withGroups(lines);
  const settings = lastOfEach(grouped);
  const read = grouped.filter(({ kind }) => kind === 'setting').length;
  const unknown = grouped.filter(({ kind }) => kind === 'unknown').length;
  return {
    line: template === null ? null : (layout?.template ?? null),
    heading: heading?.source ?? null,
    comment,
    remarks: layout?.remarks ?? [],
    quote: quoteOf(settings),
    decimal: settings.some(({ value }) => /^[+-]?\d+,\d+$/.test(value)) ? ',' : '.',
    lines: grouped,
    settings,
    understood: read + unknown === 0 ? 0 : read / (read + unknown),
  };
}

/** What no board writes: a line with it was damaged on its way. */
const noise = /[^\P{Cc}\t]|[\p{Zl}\p{Zp}\u200B-\u200F\u202A-\u202E\u2066-\u2069\uFEFF\ufffd]/u;

/** Reads lines by the template that was found, and takes only what looks like a setting. */
class Reader {
  constructor(
    private readonly template: Template | null,
    private readonly layout: Layout | null,
  ) {}

  read(line: string): LearnedSetting | null {
    if (this.template === null || line === '' || line.length > longestLine || noise.test(line)) return null;
    const fields = match(this.template, line);
    const name = fields?.get('name')?.text ?? '';
    const group = fields?.get('group')?.text ?? '';
    const index = fields?.get('index')?.text;
    const rest = fields?.get('value');
    if (rest === undefined || !isName(name) || (group !== '' && !isName(group))) return null;
    if (index !== undefined && !/^\d{1,6}$/.test(index)) return null;
    const { value, remark } = this.valueOf(rest);
    const look = valueLook(value);
    if (look === null) return null;
    return { group, name, value, look, remark: remark === '' ? null : readRemark(remark, look) };
  }

  private valueOf({ text }: FieldText): { readonly value: string; readonly remark: string } {
    const remarks = this.layout?.remarks ?? [];
    const isText = /^["']/.test(text);
    const from = isText ? Math.max(0, text.indexOf(text[0] ?? '"', 1)) : 0;
    const places = remarks.map((mark) => text.indexOf(mark, from)).filter((at) => at > 0);
    if (places.length === 0) return { value: text, remark: '' };
    const at = Math.min(...places);
    const cut = cutRemark(text.slice(at - 1), false);
    return {
      value: text.slice(0, at).trimEnd(),
      remark: cut.mark === null ? text.slice(at + 1).trim() : cut.remark,
    };
  }
}

interface Read {
  readonly number: number;
  readonly text: string;
  readonly setting: LearnedSetting | null;
}

/** For a listing without comments: what this one would begin a comment with is anybody's guess. */
const usualMarks = ['#', ';', '~'] as const;

/** What lines begin with that are no settings: the mark that most of them share, and no settings line begins with. */
function commentMark(lines: readonly string[], prefix: string): string {
  const counts = new Map<string, number>();
  for (const line of lines) {
    const mark = /^[^A-Za-z0-9\s"[({<]{1,3}(?=\s|[A-Za-z0-9]|$)/.exec(line)?.[0];
    if (mark !== undefined && !prefix.startsWith(mark)) counts.set(mark, (counts.get(mark) ?? 0) + 1);
  }
  const usual = usualMarks.find((mark) => !prefix.startsWith(mark)) ?? usualMarks[0];
  return [...counts].sort(([, one], [, other]) => other - one)[0]?.[0] ?? usual;
}

interface Heading {
  readonly source: string;
  readonly template: Template;
}

/** The form of a line that stands above settings, at least twice, and holds a name between two marks. */
function headingOf(lines: readonly Read[], prefix: string, isFit: (form: string) => boolean): Heading | null {
  const counts = new Map<string, number>();
  for (const [index, { text, setting }] of lines.entries()) {
    if (setting !== null || text === '' || noise.test(text)) continue;
    // What begins as settings do is a setting that was cut off, and heads nothing.
    if (prefix !== '' && text.startsWith(prefix)) continue;
    if (lines[index + 1]?.setting == null && lines[index + 2]?.setting == null) continue;
    const form = headingForm(text);
    if (form !== null && isFit(form)) counts.set(form, (counts.get(form) ?? 0) + 1);
  }
  const [best] = [...counts].filter(([, count]) => count >= 2).sort(([, one], [, other]) => other - one);
  if (best === undefined) return null;
  const made = compileTemplate(best[0], ['group']);
  return made.kind === 'template' ? { source: best[0], template: made.template } : null;
}

/** `[gyro]` is `[{group}]`, `in gyro:` is `in {group}:`, `== gyro ==` is `== {group} ==`. */
function headingForm(text: string): string | null {
  const parts =
    /^([^A-Za-z0-9"']{1,6}|[a-z]{2,8} )?([A-Za-z][A-Za-z0-9 /-]{0,40}?)([^A-Za-z0-9"']{1,6})?$/.exec(text);
  const [, before = '', name = '', after = ''] = parts ?? [];
  return name === '' || (before === '' && after === '') ? null : `${before}{group}${after}`;
}

function classified({ number, text, setting }: Read, comment: string, heading: Heading | null): LearnedLine {
  if (setting !== null) return { kind: 'setting', number, setting };
  if (text === '') return { kind: 'blank', number };
  const group = heading === null ? undefined : match(heading.template, text)?.get('group')?.text;
  if (group !== undefined && isName(group)) return { kind: 'heading', number, group };
  const isComment = text.startsWith(comment) || isBanner(text);
  return { kind: isComment ? 'comment' : 'unknown', number };
}

/** A line of marks, or of words between rows of marks. */
function isBanner(text: string): boolean {
  return /^[^A-Za-z0-9"']{3,}/.test(text) || /^[^A-Za-z0-9]+$/.test(text);
}

function withGroups(lines: readonly LearnedLine[]): readonly LearnedLine[] {
  let group = '';
  return lines.map((line) => {
    if (line.kind === 'heading') group = line.group;
    if (line.kind !== 'setting' || line.setting.group !== '') return line;
    return { ...line, setting: { ...line.setting, group } };
  });
}

function lastOfEach(lines: readonly LearnedLine[]): readonly LearnedSetting[] {
  const all = new Map<string, LearnedSetting>();
  for (const line of lines)
    if (line.kind === 'setting') all.set(`${line.setting.group}\n${line.setting.name}`, line.setting);
  return [...all.values()];
}

function quoteOf(settings: readonly LearnedSetting[]): LearnedShape['quote'] {
  const first = settings.find(({ value }) => isQuoted(value))?.value[0];
  return first === '"' || first === "'" ? first : '';
}
