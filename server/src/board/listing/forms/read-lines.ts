import type { Frame, Heading, LeftLine, LineKind, ListedLine, ListedParts, Stretch } from '../listing';
import type { Whole } from '../text/blocks';
import { hasLetterOrDigit } from '../text/characters';
import type { ListingLine } from '../text/line';
import type { CompiledForms } from './compiled';
import { frameOf, isProse } from './frame';
import { GroupStack } from './group-stack';
import { type HeadingRead, readHeading } from './heading';
import { indentOf } from './indent';
import { LineLooks, whyNotUnderstood } from './line-looks';
import type { PartRead } from './read-part';
import { namesColumns } from './row';
import { SettingList } from './setting-list';
import { settingOfPart } from './setting-of-part';

/** What lines say. */
export interface LinesRead extends ListedParts {
  /** How many lines hold settings or go on with one. */
  readonly settingLines: number;
  /** Which lines are of no form, as indices: to find more forms in. */
  readonly unread: readonly number[];
  /** Why nothing is read at all. */
  readonly refused: string | null;
}

/**
 * Reads lines by their forms: each becomes settings, a heading, a comment or part of a frame, or is left. `wholes`: which
 * of them are written as one.
 */
export function readLines(
  lines: readonly ListingLine[],
  forms: CompiledForms,
  most: number,
  wholes: readonly Whole[] = [],
): LinesRead {
  const reader = new LinesReader(lines, forms, wholes);
  for (let index = 0; index < lines.length && reader.list.size <= most; index += 1) reader.take(index);
  return reader.result();
}

/** A line that is being read, with its place among all and its text. */
interface CurrentLine {
  readonly index: number;
  readonly line: ListingLine;
  readonly text: string;
}

class LinesReader {
  readonly list = new SettingList();
  private readonly stack: GroupStack;
  private readonly headings: Heading[] = [];
  private readonly comments: Stretch[] = [];
  private readonly openings: Frame[] = [];
  private readonly closings: Frame[] = [];
  private readonly unread: number[] = [];
  private readonly listed: { readonly index: number; readonly line: ListedLine }[] = [];
  private readonly looks: LineLooks;
  /** Lines that are written as one, by the last of them. */
  private readonly wholes: ReadonlyMap<number, Whole>;
  private settingLines = 0;
  private firstSetting = Number.POSITIVE_INFINITY;
  private lastSetting = -1;
  /** How far the last setting is indented, while lines may go on with it. */
  private goesOnBeyond: number | null = null;

  constructor(
    private readonly lines: readonly ListingLine[],
    private readonly forms: CompiledForms,
    wholes: readonly Whole[],
  ) {
    this.wholes = new Map(wholes.map((whole) => [whole.end - 1, whole]));
    const { indent, closers } = forms.forms;
    this.stack = new GroupStack(closers.length > 0 ? 'closers' : indent === 'groups' ? 'indent' : 'flat');
    this.looks = new LineLooks(lines, forms);
  }

  take(index: number): void {
    const line = this.lines[index];
    if (line === undefined || line.text.trim() === '') this.goesOnBeyond = null;
    else this.takeNonBlank({ index, line, text: line.text });
    this.looks.forget(index);
    const whole = this.wholes.get(index);
    if (whole !== undefined) this.asOne(whole);
  }

  private takeNonBlank(current: CurrentLine): void {
    const { index, line } = current;
    const first = this.list.size;
    const kind = this.takenAs(current);
    if (kind === null) this.unread.push(index);
    else if (kind !== 'dirt') {
      const listed = { kind, text: line.asWritten, first, end: this.list.size, groups: this.stack.groups };
      this.listed.push({ index, line: listed });
    }
  }

  /** What was said in the lines of a whole becomes one, if there are settings in it. */
  private asOne({ first, text }: Whole): void {
    const from = this.listed.findLastIndex(({ index }) => index < first) + 1;
    const settings = this.listed.slice(from).filter(({ line }) => line.kind === 'settings');
    const [one] = settings;
    const last = settings.at(-1);
    if (one === undefined || last === undefined) return;
    const { groups } = this.stack;
    const line: ListedLine = { kind: 'settings', text, first: one.line.first, end: last.line.end, groups };
    this.listed.splice(from, this.listed.length, { index: first, line });
  }

  /** Takes a line as the first of these that it can be; null where it is none. */
  private takenAs(current: CurrentLine): LineKind | 'dirt' | null {
    if (this.looks.isOverwritten(current.index)) return 'dirt';
    if (this.takeContinued(current)) return 'continuation';
    if (this.takeFrame(current)) return 'frame';
    if (this.takeColumns(current)) return 'heading';
    if (this.takeHeading(current)) return 'heading';
    if (this.takeComment(current)) return 'comment';
    if (this.takeCloser(current)) return 'closer';
    if (this.takeRule(current)) return 'comment';
    if (this.takeBareGroup(current)) return 'heading';
    if (this.takeSettings(current)) return 'settings';
    return this.takeContinuation(current) ? 'continuation' : null;
  }

  private takeFrame({ line, text }: CurrentLine): boolean {
    const opening = this.list.size === 0 ? frameOf(this.forms.openings, line, text) : null;
    // A text without settings ends as well.
    const frame = opening ?? frameOf(this.forms.closings, line, text);
    if (frame === null) return false;
    (frame === opening ? this.openings : this.closings).push(frame);
    return true;
  }

  private takeHeading(current: CurrentLine): boolean {
    const { index, text } = current;
    const heading = readHeading(this.forms.headings, text);
    if (heading === null) return false;
    const isComment = this.looks.isComment(index);
    if (isComment)
      return (!heading.isWeak || this.looks.isTitleHere(index, heading)) && this.open(current, heading, true);
    const parts = this.looks.partsAt(index);
    const holds = ({ rest, isLoose }: PartRead) =>
      rest.end > rest.start && text.slice(rest.start, rest.end) !== '{' && !(isLoose && !heading.isWeak);
    if (parts.some(holds)) return false;
    const next = this.looks.follower(index);
    const isDeeper = next !== null && indentOf(this.looks.textOf(next)) > indentOf(text);
    if (heading.isWeak && !this.looks.isHeadingHere(index, next, isDeeper)) return false;
    return this.open(current, heading, !isDeeper);
  }

  private open({ line, text }: CurrentLine, { group }: HeadingRead, isFlat: boolean): boolean {
    if (!this.stack.open(text.slice(group.start, group.end), indentOf(text), isFlat)) return false;
    this.headings.push({ groups: this.stack.groups, at: line.at(group.start, group.end) });
    this.goesOnBeyond = null;
    return true;
  }

  private takeComment({ index, line }: CurrentLine): boolean {
    if (!this.looks.isComment(index)) return false;
    this.comments.push(line.whole());
    return true;
  }

  private takeCloser({ text }: CurrentLine): boolean {
    if (!this.forms.forms.closers.includes(text.trim())) return false;
    this.goesOnBeyond = null;
    return this.stack.close();
  }

  /** The row that names the columns of a table. */
  private takeColumns({ line, text }: CurrentLine): boolean {
    const { table } = this.forms.forms;
    if (table === undefined || !namesColumns(text, table)) return false;
    this.comments.push(line.whole());
    return true;
  }

  /** A name in a column with nothing behind it, above settings further in, is their group. */
  private takeBareGroup(current: CurrentLine): boolean {
    const { index, text } = current;
    const [only, ...more] = this.looks.partsAt(index);
    const isEmpty = only?.style.kind === 'plain' && only.rest.end <= only.rest.start;
    if (only === undefined || !isEmpty || more.length > 0 || this.forms.forms.indent !== 'groups')
      return false;
    if (
      indentOf(this.looks.textOf(index + 1)) <= indentOf(text) ||
      this.looks.partsAt(index + 1).length === 0
    )
      return false;
    return this.open(current, { group: only.name, isWeak: true }, false);
  }

  private takeSettings({ index, line, text }: CurrentLine): boolean {
    const indent = indentOf(text);
    const parts = this.looks.partsAt(index);
    if (parts.length === 0) return false;
    this.stack.at(indent);
    for (const part of parts) this.list.add(settingOfPart(line, part, this.stack.groups, this.forms));
    this.settingLines += 1;
    this.firstSetting = Math.min(this.firstSetting, index);
    this.lastSetting = index;
    this.goesOnBeyond = parts.at(-1)?.style.kind === 'presence' ? null : indent;
    this.openBelow(index, indent, parts);
    return true;
  }

  /** Settings further in belong to the one above them. */
  private openBelow(index: number, indent: number, parts: readonly PartRead[]): void {
    const [only] = parts;
    const next = index + 1;
    if (this.forms.forms.indent !== 'groups' || only === undefined || parts.length > 1) return;
    if (indentOf(this.looks.textOf(next)) <= indent || this.looks.partsAt(next).length === 0) return;
    this.stack.open(this.looks.textOf(index).slice(only.name.start, only.name.end), indent, false);
  }

  /** Where lines further in go on with a value, they do whatever they look like. */
  private takeContinued(current: CurrentLine): boolean {
    return this.forms.forms.indent === 'continues' && this.takeContinuation(current);
  }

  private takeContinuation({ index, line, text }: CurrentLine): boolean {
    const { indent } = this.forms.forms;
    if (indent === 'none' || this.goesOnBeyond === null) return false;
    if (indentOf(text) <= this.goesOnBeyond || !this.list.goOn(line)) return false;
    this.settingLines += 1;
    this.lastSetting = index;
    return true;
  }

  /** A line of marks alone draws a rule. */
  private takeRule({ line, text }: CurrentLine): boolean {
    if (hasLetterOrDigit(text)) return false;
    this.comments.push(line.whole());
    return true;
  }

  result(): LinesRead {
    const left: LeftLine[] = [];
    for (const index of this.unread) {
      const line = this.lines[index];
      if (line === undefined) continue;
      const frames =
        index < this.firstSetting ? this.openings : index > this.lastSetting ? this.closings : null;
      if (frames !== null && this.list.size > 0 && isProse(line.text, this.forms))
        frames.push({ at: line.whole(), board: null, count: null });
      else left.push({ number: line.number, at: line.whole(), reason: whyNotUnderstood(line.text) });
    }
    return {
      settings: this.list.settings,
      headings: this.headings,
      comments: this.comments,
      openings: this.openings,
      closings: this.closings,
      left,
      lines: this.listed.map(({ line }) => line),
      settingLines: this.settingLines,
      unread: this.unread,
      refused: null,
    };
  }
}
