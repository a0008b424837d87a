import type { HandOver } from '../catalog/model/hand-over';
import type { CraftView } from '../craft/view';
import { type Entries, type Entry, entriesOf } from './entries';
import { keptLines } from './kept-lines';
import { type LineForm, lineFormOf } from './line-form';
import { forbidden } from './meaning/spelling';
import { keyOf } from './one-group';
import type { Profile } from './profile/profile';
import { fill } from './template';

/** A craft in the board's own text, with what must be said about it. */
export interface Written extends Entries {
  readonly text: string;
  /** The lines of the text without their ends. */
  readonly lines: readonly string[];
  /** How many of them are settings. */
  readonly count: number;
  /** Settings whose line would be longer than the board reads: left out of the text. */
  readonly tooLong: readonly Entry[];
}

export interface WriteOptions {
  /** Said at the top as comments: cautions, accepted risks. */
  readonly cautions: readonly string[];
  /** Only what is new or other than in this record. */
  readonly since: HandOver | null;
}

/** Writes a craft with the view's pack as the profile says: in its order, under its headings. */
export function writeBoardText(
  profile: Profile,
  view: CraftView,
  { cautions, since }: WriteOptions,
): Written {
  const found = entriesOf(profile, view);
  const before = new Map(since?.lines.map(({ group, name, value }) => [keyOf(group, name), value]));
  const changed = found.entries.filter(({ group, name, value }) => before.get(keyOf(group, name)) !== value);
  const form = lineFormOf(profile);
  const page = form === null ? null : new Page(profile, form);
  for (const caution of cautions) page?.comment(caution);
  for (const entry of changed) page?.setting(entry);
  if (since === null)
    for (const { group, text } of keptLines(view.craft.root, profile)) page?.verbatim(group, text);
  const lines = page?.finished() ?? [];
  const end = profile.text.lineEnd === 'crlf' ? '\r\n' : '\n';
  return {
    ...found,
    text: lines.map((line) => line + end).join(''),
    lines,
    count: page?.count ?? 0,
    tooLong: page?.tooLong ?? changed,
  };
}

/** What is to be remembered of a hand-over. */
export function handOverOf(
  profile: Profile,
  view: CraftView,
  { entries }: Entries,
  reason: string | null,
): HandOver {
  const lines = entries.map(({ group, name, value }) => ({ group, name, value }));
  return { version: 1, board: profile.name, pack: view.pack, reason, lines };
}

/** The lines in the pieces that the board takes at once; one piece where it takes any number. */
export function piecesOf(
  { text: { pace } }: Profile,
  lines: readonly string[],
): readonly (readonly string[])[] {
  if (pace === undefined) return [lines];
  const pieces: string[][] = [];
  for (let from = 0; from < lines.length; from += pace.lines)
    pieces.push(lines.slice(from, from + pace.lines));
  return pieces;
}

/** Where nobody has said what the board reads. */
export const usualLine = 200;

function longest({ text }: Profile): number {
  return text.longestLine ?? usualLine;
}

class Page {
  readonly tooLong: Entry[] = [];
  count = 0;
  private readonly comments: string[] = [];
  private readonly settings: string[] = [];
  private group: string | null = null;

  constructor(
    private readonly profile: Profile,
    private readonly form: LineForm,
  ) {}

  /** Wrapped at blanks to what the board reads. */
  comment(text: string): void {
    const { comment } = this.form;
    const longestLine = longest(this.profile);
    let line = comment;
    for (const word of text.split(/\s+/)) {
      if (line.length + 1 + word.length > longestLine && line !== comment) {
        this.comments.push(line);
        line = comment;
      }
      line = `${line} ${word}`.slice(0, longestLine);
    }
    this.comments.push(line);
  }

  setting(entry: Entry): void {
    const { line } = this.form;
    const { group, name, value } = entry;
    const written = fill(line, { group, name, value, index: String(this.count + 1) });
    // What could start a second line has no way into a value; this holds it once more, whatever a profile says.
    if (written.length > longest(this.profile) || forbidden.test(written)) this.tooLong.push(entry);
    else this.add(group, written);
  }

  verbatim(group: string, line: string): void {
    if (line.length <= longest(this.profile) && !forbidden.test(line)) this.add(group, line);
  }

  finished(): readonly string[] {
    const { opening, closing } = this.form;
    const values = { board: this.profile.name, count: String(this.count) };
    return [
      ...opening.map((template) => fill(template, values)),
      ...this.comments,
      ...this.settings,
      ...closing.map((template) => fill(template, values)),
    ];
  }

  private add(group: string, line: string): void {
    const { heading } = this.form;
    if (heading !== null && group !== this.group) this.settings.push(fill(heading, { group }));
    this.group = group;
    this.settings.push(line);
    this.count += 1;
  }
}
