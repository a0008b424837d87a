import type { Catalog } from '../catalog/catalog';
import { valueText } from '../craft/value-text';
import type { Span } from '../language/ast';
import { meaningOf, namesOf } from './meaning/meanings';
import { Speller } from './meaning/spelling';
import { keyOf, oneGroup } from './one-group';
import type { Profile, RowFound } from './profile/profile';
import { type BoardLine, readLine, type SettingLine } from './read-lines';
import { pathOf } from './to-script';

/** One line of a board's text and what it says as a line of a craft script. */
export interface TranslatedLine {
  readonly text: string;
  readonly line: BoardLine;
  /** The group that it stands in. */
  readonly group: string;
  /** The script's line: a whole path with its value, or nothing. */
  readonly script: string;
  /** Where name and value stand in `script`; null where it sets nothing. */
  readonly spans: { readonly name: Span; readonly value: Span } | null;
  /** What is wrong with it as a line of this board. */
  readonly trouble: Trouble | null;
}

/** Something wrong with a line that only the board's profile can tell. */
export interface Trouble extends Span {
  readonly id: 'board/unreadable' | 'board/unknown-setting' | 'board/value-unclear' | 'board/part-missing';
  readonly values: Readonly<Record<string, string>>;
}

/** A board's text as a craft script, line for line, so that one engine serves both. */
export interface Translation {
  readonly profile: Profile;
  readonly lines: readonly TranslatedLine[];
  /** One line more than the board's text has: the last names the board. */
  readonly script: string;
}

/** Reads lines again only where their text or their group has changed. */
export class Translator {
  private read = new Map<string, BoardLine>();

  constructor(
    readonly profile: Profile,
    private readonly catalog: Catalog,
  ) {}

  translate(texts: readonly string[]): Translation {
    const lines = this.readAll(texts);
    const settings = lastOfEach(lines);
    const translated = lines.map((read) => this.translated(read, settings));
    const script = [...translated.map((one) => one.script), `board.profile = ${this.profile.name}`];
    return { profile: this.profile, lines: translated, script: script.join('\n') };
  }

  private readAll(texts: readonly string[]): readonly Read[] {
    const next = new Map<string, BoardLine>();
    let group = '';
    const all = texts.map((text): Read => {
      const key = keyOf(group, text);
      const line = this.read.get(key) ?? readLine(this.profile, text, group);
      next.set(key, line);
      if (line.kind === 'heading') group = line.group.text;
      return { text, line, group: line.kind === 'setting' ? line.group : group };
    });
    this.read = next;
    return all;
  }

  private translated(
    { text, line, group }: Read,
    settings: ReadonlyMap<string, SettingLine>,
  ): TranslatedLine {
    const nothing = { text, line, group, script: '', spans: null, trouble: null };
    if (line.kind === 'unknown') {
      const start = text.length - text.trimStart().length;
      const trouble: Trouble = {
        id: 'board/unreadable',
        values: this.board,
        start,
        end: text.trimEnd().length,
      };
      return { ...nothing, trouble };
    }
    if (line.kind !== 'setting') return nothing;
    const { found, name } = line;
    if (found === undefined) {
      const values = { ...this.board, name: name.text, group: line.group };
      return {
        ...nothing,
        trouble: { id: 'board/unknown-setting', values, start: name.start, end: name.end },
      };
    }
    return { ...nothing, ...this.setting(line, found, settings) };
  }

  /** A parameter of several settings stands where its first one does. */
  private setting(
    { name, value }: SettingLine,
    found: RowFound,
    settings: ReadonlyMap<string, SettingLine>,
  ): Partial<TranslatedLine> {
    const meaning = meaningOf(this.profile, found.row);
    if (meaning === undefined) return {};
    const path = pathOf(meaning, found.member);
    const own = meaning.parts.indexOf(found.row);
    const names = namesOf(this.profile, meaning, found.member) ?? [];
    const parts = names.map((one) => settings.get(keyOf(oneGroup(one.groups), one.name)));
    const missing = names.filter((_, part) => parts[part] === undefined);
    if (missing.length > 0) {
      const values = { ...this.board, path, missing: missing.map((one) => one.name).join(', ') };
      return { trouble: { id: 'board/part-missing', values, start: name.start, end: name.end } };
    }
    if (own > 0) return {};
    const parameter = this.catalog.parameter(path);
    if (parameter === undefined) return {};
    const written = parts.map((part) => part?.value.text ?? '');
    // The line itself counts for its own part: where it stands there twice, each tells its own value.
    written[own] = value.text;
    const understood = new Speller(meaning, parameter, this.profile.manner).read(written);
    if (understood.kind === 'unclear') {
      const values = { ...this.board, given: written[understood.part] ?? '', reason: understood.reason };
      const trouble: Trouble = { id: 'board/value-unclear', values, start: value.start, end: value.end };
      // Set, but nobody knows to what: nothing may be said to be missing.
      return { ...scriptLine(path, ''), trouble };
    }
    return scriptLine(path, valueText(understood.value, parameter.parameter));
  }

  private get board(): { readonly board: string } {
    return { board: this.profile.title };
  }
}

interface Read {
  readonly text: string;
  readonly line: BoardLine;
  readonly group: string;
}

function scriptLine(path: string, value: string): Pick<TranslatedLine, 'script' | 'spans'> {
  const start = path.length + 3;
  return {
    script: `${path} = ${value}`,
    spans: { name: { start: 0, end: path.length }, value: { start, end: start + value.length } },
  };
}

function lastOfEach(lines: readonly Read[]): ReadonlyMap<string, SettingLine> {
  return new Map(
    lines.flatMap(({ line }) =>
      line.kind === 'setting' ? [[keyOf(line.group, line.name.text), line] as const] : [],
    ),
  );
}

/** A column of the script's line in the board's: in the name or in the value, at its start or its end. */
export function toBoard(line: TranslatedLine, character: number, isEnd: boolean): number {
  if (line.spans === null || line.line.kind !== 'setting') return isEnd ? line.text.length : 0;
  const { name, value } = line.line;
  const field =
    character < line.spans.value.start && !(isEnd && character > line.spans.name.end) ? name : value;
  return isEnd ? field.end : field.start;
}

/** A column of the board's line in the script's: somewhere in the name, or in the value. */
export function toScript(line: TranslatedLine, character: number): number {
  if (line.spans === null || line.line.kind !== 'setting') return 0;
  const { value } = line.line;
  if (character < value.start) return Math.min(character, line.spans.name.end);
  return Math.min(line.spans.value.start + (character - value.start), line.spans.value.end);
}
