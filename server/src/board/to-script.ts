import type { Catalog, FoundParameter } from '../catalog/catalog';
import { valueText } from '../craft/value-text';
import { type KeptLine, keptComment } from './kept-lines';
import { parameterPath } from './layer/parameter-path';
import { lineFormOf } from './line-form';
import { meaningOf, namesOf } from './meaning/meanings';
import { forbidden, Speller } from './meaning/spelling';
import { keyOf, oneGroup } from './one-group';
import type { Profile } from './profile/profile';
import { type PlacedBoardLine, readBoardLines, type SettingLine } from './read-lines';

/** A craft script made from a capture, with what became of its lines. */
export interface MadeScript {
  readonly text: string;
  /** Settings lines that parameters stand for. */
  readonly understood: number;
  /** Settings lines that the script keeps as comments: the profile does not list them, or their value is none. */
  readonly kept: readonly Told[];
  /** Lines that are nothing the profile knows; kept as comments too. */
  readonly unknown: readonly Told[];
  /** Settings that stand in the capture more than once: the last one counts, the others are kept. */
  readonly repeated: readonly Told[];
}

/** A line of the capture (0-based), its text, and why it is told. */
export interface Told {
  readonly line: number;
  readonly text: string;
  readonly reason: string;
}

/** Makes a craft script of a board's text. Nothing is lost: what no parameter stands for is kept in comments. */
export function scriptFromBoardText(profile: Profile, catalog: Catalog, capture: string): MadeScript {
  return new Maker(profile, catalog, readBoardLines(profile, capture)).made();
}

interface Captured extends SettingLine {
  readonly number: number;
  readonly text: string;
  /** Comments that stood right above it. */
  readonly above: readonly string[];
}

interface Row {
  readonly found: FoundParameter;
  readonly value: string;
  readonly above: readonly string[];
}

class Maker {
  private readonly rows: Row[] = [];
  private readonly kept: Told[] = [];
  private readonly unknown: Told[] = [];
  private readonly repeated: Told[] = [];
  private readonly keptComments: string[] = [];
  private readonly notes: string[] = [];
  private understood = 0;
  private readonly comment: string;

  constructor(
    private readonly profile: Profile,
    private readonly catalog: Catalog,
    private readonly lines: readonly PlacedBoardLine[],
  ) {
    this.comment = lineFormOf(profile)?.comment ?? '';
  }

  made(): MadeScript {
    const settings = this.lastOfEach(this.settings());
    const done = new Set<Captured>();
    for (const setting of settings.values()) {
      if (done.has(setting)) continue;
      for (const part of this.take(setting, settings)) done.add(part);
    }
    const { kept, unknown, repeated, understood } = this;
    return { text: this.script(), understood, kept, unknown, repeated };
  }

  /** Settings lines, with the comments above them; everything else is told or noted. */
  private settings(): readonly Captured[] {
    const settings: Captured[] = [];
    let above: string[] = [];
    for (const { number, text, line } of this.lines) {
      if (line.kind === 'comment') above.push(shown(text.trim().slice(this.comment.length).trim()));
      else if (line.kind === 'setting') {
        settings.push({ ...line, number, text, above });
        above = [];
      } else if (line.kind === 'unknown') {
        this.unknown.push({ line: number, text, reason: 'no line that the profile knows' });
        this.notes.push(`# not understood: ${shown(text)}`);
      } else {
        this.notes.push(...above.map((comment) => `# ${comment}`));
        above = [];
      }
    }
    this.notes.push(...above.map((comment) => `# ${comment}`));
    return settings;
  }

  private lastOfEach(settings: readonly Captured[]): ReadonlyMap<string, Captured> {
    const last = new Map<string, Captured>();
    for (const setting of settings) {
      const key = keyOf(setting.group, setting.name.text);
      const before = last.get(key);
      if (before !== undefined) {
        this.repeated.push({
          line: before.number,
          text: before.text,
          reason: 'it stands there again further down',
        });
        this.notes.push(`# stood there earlier: ${shown(before.text)}`);
      }
      last.set(key, setting);
    }
    return last;
  }

  /** Reads the parameter that a setting belongs to, with its other parts; gives the lines that this used up. */
  private take(setting: Captured, all: ReadonlyMap<string, Captured>): readonly Captured[] {
    const { found } = setting;
    if (found === undefined) return this.keep([setting], 'the profile does not list it');
    const meaning = meaningOf(this.profile, found.row);
    if (meaning === undefined) return this.keep([setting], 'nobody has said what it means');
    const names = namesOf(this.profile, meaning, found.member) ?? [];
    const parts = names.map(({ groups, name }) => all.get(keyOf(oneGroup(groups), name)));
    const there = parts.flatMap((part) => part ?? []);
    if (there.length < parts.length)
      return this.keep(there, `it takes ${parts.length} settings together, and ${there.length} are there`);
    const path = parameterPath(meaning, found.member);
    const parameter = this.catalog.parameter(path);
    if (parameter === undefined) return this.keep(there, `there is no parameter ${path}`);
    const speller = new Speller(meaning, parameter, this.profile.manner);
    const understood = speller.read(there.map(({ value }) => value.text));
    if (understood.kind === 'unclear') return this.keep(there, understood.reason);
    const value = valueText(understood.value, parameter.parameter);
    this.rows.push({ found: parameter, value, above: there.flatMap(({ above }) => above) });
    this.understood += there.length;
    return there;
  }

  private keep(settings: readonly Captured[], reason: string): readonly Captured[] {
    for (const { number, text, group, above } of settings) {
      this.kept.push({ line: number, text, reason });
      const line: KeptLine = { group, text: shown(text) };
      this.keptComments.push(...above.map((comment) => `# ${comment}`), keptComment(this.profile.name, line));
    }
    return settings;
  }

  private script(): string {
    const parts = [
      [`# Made from text captured from a ${this.profile.title}. Propellers off at the bench.`, ...this.notes],
      ...sections(this.profile.name, this.catalog, this.rows),
      ...(this.keptComments.length === 0 ? [] : [this.keptComments]),
    ];
    return parts.map((lines) => lines.map((line) => `${line}\n`).join('')).join('\n');
  }
}

/** The settings in the catalogue's order, section by section. */
function sections(board: string, catalog: Catalog, rows: readonly Row[]): readonly (readonly string[])[] {
  const order = new Map([...catalog.parameters.keys()].map((name, index) => [name, index]));
  const sorted = rows
    .filter(({ found }) => found.path !== 'board.profile')
    .sort(
      (one, other) =>
        (order.get(one.found.name) ?? 0) - (order.get(other.found.name) ?? 0) ||
        (one.found.path < other.found.path ? -1 : 1),
    );
  const bySection = new Map<string, string[]>([['board', ['[board]', `profile = ${board}`]]]);
  for (const { found, value, above } of sorted) {
    const dot = found.path.lastIndexOf('.');
    const section = found.path.slice(0, dot);
    const lines = bySection.get(section) ?? [`[${section}]`];
    lines.push(...above.map((comment) => `# ${comment}`), `${found.path.slice(dot + 1)} = ${value}`);
    bySection.set(section, lines);
  }
  return [...bySection.values()];
}

/** A captured line as a comment may hold it: what would break or turn a line is shown by its number. */
function shown(text: string): string {
  if (!forbidden.test(text)) return text;
  return [...text]
    .map((character) =>
      forbidden.test(character) && character !== '\t'
        ? `\\u{${(character.codePointAt(0) ?? 0).toString(16)}}`
        : character,
    )
    .join('');
}
