import type { Forms } from '../../catalog/model/board-forms';
import { commentMark } from '../listing/find/comments';
import { noForms } from '../listing/forms/compiled';
import { besideFields, type Field, filled, templateOf } from '../listing/forms/template';
import type { Listing } from '../listing/listing';
import { settingKey } from '../listing/setting-key';
import { forbidden } from '../meaning/forbidden';
import type { Entry } from './entries';
import { GroupLines } from './group-lines';
import type { Unwritten } from './patch';

export interface PageForm {
  /** null: nobody has said how the board writes its settings. */
  readonly forms: Forms | null;
  /** The lines that tell the board one setting, as templates; null: the form of its listing. */
  readonly command: readonly string[] | null;
  /** Between groups that lie in each other, in a command; null: nobody has said it. */
  readonly commandPath: string | null;
  /** What stands behind its value where a command takes a unit; empty for none. */
  readonly unitOf: (entry: Entry) => string;
  /** For {board} in the lines around the settings; null: none are written. */
  readonly board: string | null;
  readonly longestLine: number | null;
}

/** Lines of a board's text that are made from forms, not from a captured text. */
export class FormedText {
  readonly unwritten: Unwritten[] = [];
  count = 0;
  private readonly lines: string[] = [];
  private readonly comments: string[] = [];
  private open: string | null = null;
  private readonly forms: Forms;

  constructor(private readonly form: PageForm) {
    this.forms = form.forms ?? noForms;
  }

  get hasComments(): boolean {
    return this.comments.length > 0;
  }

  /** Wrapped at blanks to what the board reads; nothing where the board has no comments. */
  comment(text: string): void {
    // What a pilot has said that a line begins with may mean something else to the board.
    const mark = this.forms.comments.find((one) => commentMark(`${one.trim()} `) !== null)?.trim();
    if (mark === undefined || this.form.command !== null) return;
    this.comments.push(...commentLines(text, mark, this.form.longestLine ?? usualLine));
  }

  setting(entry: Entry): void {
    const lines = this.linesOf(entry);
    if (typeof lines === 'string') this.unwritten.push({ entry, reason: lines });
    else {
      this.heading(entry.groups);
      this.lines.push(...lines);
      this.count += 1;
    }
  }

  /** The lines of a captured text that hold these settings, in the groups that they stand in. */
  captured({ lines, settings }: Listing, keys: ReadonlySet<string>): void {
    const inGroups = new GroupLines(this.lines);
    let isTaken = false;
    for (const line of lines) {
      const own = settings.slice(line.first, line.end);
      const wanted = own.filter((setting) => keys.has(settingKey(setting)));
      if (line.kind === 'settings') isTaken = wanted.length > 0;
      const isWritten = isTaken && (line.kind === 'settings' || line.kind === 'continuation');
      inGroups.take(line, own[0]?.groups ?? [], isWritten);
      this.count += wanted.length;
    }
    this.open = null;
  }

  finished(): readonly string[] {
    const { forms } = this;
    const { board } = this.form;
    const values = new Map<Field, string>([
      ['board', board ?? ''],
      ['count', String(this.count)],
    ]);
    const framed = (templates: readonly string[]) =>
      board === null ? [] : templates.map((source) => filled(templateOf(source), values));
    return [...framed(forms.opening), ...this.comments, ...this.lines, ...framed(forms.closing)];
  }

  /** The lines that hold a setting; a text: why there are none, as the end of a sentence. */
  private linesOf(entry: Entry): readonly string[] | string {
    const { groups, name, value, quote } = entry;
    const { forms } = this;
    const { command, longestLine } = this.form;
    const [line] = forms.lines.filter(({ form }) => form.includes('{value}'));
    const templates = command ?? (line === undefined ? [] : [line.form]);
    if (templates.length === 0) return 'nothing says how the board writes a setting';
    const takesGroup = templates.some((source) => source.includes('{group}'));
    const inName = !takesGroup && forms.path !== undefined ? [...groups, name].join(forms.path) : name;
    const shown = forms.headings.length > 0 ? 1 : 0;
    const between = (command === null ? null : this.form.commandPath) ?? forms.path;
    if (command !== null && takesGroup && groups.length === 0)
      return 'a command names a group, and it stands in none';
    if (command !== null && takesGroup && groups.length > 1 && between === undefined)
      return 'nobody has said how a command names groups within groups';
    if (command === null && !takesGroup && forms.path === undefined && groups.length > shown)
      return 'its groups can only be written over a captured text';
    const values = new Map<Field, string>([
      ['group', groups.join(between ?? '/')],
      ['name', inName],
      ['value', quote + value + quote],
      ['unit', this.form.unitOf(entry)],
    ]);
    const missing = templates
      .flatMap((source) => templateOf(source).fields)
      .find((field) => !values.has(field) && !besideFields.includes(field));
    if (missing !== undefined) return `its line needs {${missing}}, which only a captured text shows`;
    const written = templates.map((source) => filled(templateOf(source), values).trimEnd());
    // What could start a second line has no way into a value; this holds it once more, whatever a profile says.
    if (written.some((text) => forbidden.test(text.replaceAll('\t', ' '))))
      return 'it holds characters that no board reads';
    if (longestLine !== null && written.some((text) => text.length > longestLine))
      return `its line is longer than the ${longestLine} characters that the board reads`;
    return written;
  }

  private heading(groups: readonly string[]): void {
    const { forms } = this;
    const { command } = this.form;
    const [source] = forms.headings;
    const [group] = groups;
    if (command !== null || source === undefined || group === undefined || forms.path !== undefined) return;
    if (group !== this.open)
      this.lines.push(filled(templateOf(source), new Map<Field, string>([['group', group]])));
    this.open = group;
  }
}

/** Comments are wrapped to this where nobody has said what the board reads. */
const usualLine = 100;

function commentLines(text: string, mark: string, longest: number): readonly string[] {
  const lines: string[] = [];
  let line = mark;
  for (const word of text.split(/\s+/)) {
    if (line.length + 1 + word.length > longest && line !== mark) {
      lines.push(line);
      line = mark;
    }
    line = `${line} ${word}`.slice(0, longest);
  }
  return [...lines, line];
}
