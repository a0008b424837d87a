import type { Catalog } from '../catalog/catalog';
import type { Problem } from '../language/ast';
import { Document, type DocumentEdit } from '../language/document';
import { ownGroup } from '../language/path-text';
import type { ScriptLine } from '../language/script-line';
import { StatementCache } from '../language/statement-cache';
import { KeyMap } from '../query/key-map';
import { differing, type GuessedLine, GuessedLines } from './guessed-lines';
import { type CraftKey, inputKeys, type LineSubject, pathOfLine, subjectsOf } from './keys';
import { checkLine } from './line-check';
import { LineIndex } from './line-index';
import { membershipsIn } from './memberships';
import { namesUsedBy } from './used-names';

/**
 * One script as it stands, with an index of what its lines say and what is wrong with each by itself.
 * It moves forward with each edit and tells which inputs changed; the cost follows the edit, not the script.
 */
export class Script {
  private current: Document;
  private readonly index = new LineIndex();
  private readonly wrong = new Map<ScriptLine, readonly Problem[]>();
  private readonly dynamic = new Set<ScriptLine>();
  private readonly repeated = new KeyMap<LineSubject, LineSubject>();
  /** Collection -> member -> how many lines name it. */
  private readonly members = new Map<string, Map<string, number>>();
  private readonly groups = new Map<string, number>();
  /** Path -> how many lines set it for one pack only. */
  private readonly overlaid = new Map<string, number>();
  /** The constants that lines name, with how many do. */
  private readonly used = new Map<string, number>();
  private readonly unknown: GuessedLines;

  constructor(
    readonly uri: string,
    text: string,
    private readonly catalog: Catalog,
    statements = new StatementCache(),
    /** Whether it is what a board's text says: another file's text, with lines of its own. */
    readonly isBoardText = false,
  ) {
    this.current = Document.of(text, statements);
    this.unknown = new GuessedLines(catalog, (line) => this.lineNumber(line));
    for (const line of this.current.lines()) this.add(line);
  }

  get document(): Document {
    return this.current;
  }

  /** Applies edits one after the other and gives the keys of all that changed. */
  edit(edits: Iterable<DocumentEdit>): readonly CraftKey[] {
    const guesses = this.unknown.all;
    const first = this.current.lineAt(0);
    const wasEmpty = this.isEmpty;
    const changed: CraftKey[] = [];
    for (const edit of edits) {
      const { document, change } = this.current.edit(edit);
      this.current = document;
      // What comes first: a subject that stays is never without a line.
      for (const line of change.added) changed.push(...this.add(line));
      for (const line of change.removed) changed.push(...this.remove(line));
    }
    if (this.current.lineAt(0) !== first) changed.push(inputKeys.firstLine);
    for (const { path } of differing(guesses, this.unknown.all)) {
      changed.push(inputKeys.setting(path));
      for (const { collection } of membershipsIn(path, this.catalog))
        changed.push(inputKeys.members(collection));
    }
    if (this.isEmpty !== wasEmpty) changed.push(inputKeys.emptiness);
    return changed;
  }

  /** The line whose unknown name was surely meant to set a path. */
  guessedLine(path: string, pack: string | null): ScriptLine | undefined {
    return this.unknown.all.findLast((one) => one.path === path && one.line.section.pack === pack)?.line;
  }

  lines(subject: LineSubject): readonly ScriptLine[] {
    const found = this.index.get(subject);
    if (found.length < 2) return found;
    return [...found].sort((one, other) => this.lineNumber(one) - this.lineNumber(other));
  }

  has(subject: LineSubject): boolean {
    return this.index.has(subject);
  }

  lineNumber(line: ScriptLine): number {
    return this.current.lineNumberOf(line);
  }

  /** Lines with problems that show without the rest of the craft. */
  get problems(): ReadonlyMap<ScriptLine, readonly Problem[]> {
    return this.wrong;
  }

  /** Lines that can only be checked with the rest of the craft. */
  get dynamicLines(): ReadonlySet<ScriptLine> {
    return this.dynamic;
  }

  /** What more than one line of this script sets for the same pack or for all. */
  repeatedSubjects(): Iterable<LineSubject> {
    return this.repeated.values();
  }

  /** Whether any line sets a path, for whichever pack, or surely means to. */
  sets(path: string): boolean {
    return (
      this.has(inputKeys.setting(path)) ||
      this.overlaid.has(path) ||
      this.unknown.all.some((one) => one.path === path)
    );
  }

  /** Whether lines set a path for one pack only, or surely mean to. */
  isOverlaid(path: string): boolean {
    const isGuess = (one: GuessedLine) => one.path === path && one.line.section.pack !== null;
    return this.overlaid.has(path) || this.unknown.all.some(isGuess);
  }

  /** The members of a collection that lines name, also those that a misspelt name surely means. */
  membersOf(collection: string): readonly string[] {
    const guessed = this.unknown.all
      .flatMap(({ path }) => membershipsIn(path, this.catalog))
      .flatMap((one) => (one.collection === collection ? [one.member] : []));
    return [...new Set([...(this.members.get(collection)?.keys() ?? []), ...guessed])];
  }

  /** Whether no line says anything: there are only comments, or not even those. */
  get isEmpty(): boolean {
    return this.index.isEmpty && this.wrong.size === 0;
  }

  /** Whether any line says something in a group. */
  hasGroup(group: string): boolean {
    return this.groups.has(group);
  }

  /** How many lines say something in a group. */
  sizeOf(group: string): number {
    return this.groups.get(group) ?? 0;
  }

  /** Paths that the script sets, for all packs or for some; costs as much as the script is long. */
  settingPaths(): ReadonlySet<string> {
    return new Set([...this.current.lines()].flatMap(({ settingPath }) => settingPath ?? []));
  }

  /** The names that lines are calculated from, or may be meant to. */
  get usedNames(): ReadonlyMap<string, number> {
    return this.used;
  }

  constantNames(): readonly string[] {
    const lines = [...this.current.lines()];
    const names = lines.flatMap(({ statement }) =>
      statement.kind === 'constant' ? [statement.name.text] : [],
    );
    return [...new Set(names)];
  }

  private add(line: ScriptLine): readonly CraftKey[] {
    for (const subject of subjectsOf(line)) this.index.add(subject, line);
    const { problems, isDynamic, isUnknown } = checkLine(line, this.catalog);
    if (problems.length > 0) this.wrong.set(line, problems);
    if (isDynamic) this.dynamic.add(line);
    if (isUnknown === true) this.unknown.add(line);
    return this.noted(line, 1);
  }

  private remove(line: ScriptLine): readonly CraftKey[] {
    for (const subject of subjectsOf(line)) this.index.remove(subject, line);
    this.wrong.delete(line);
    this.dynamic.delete(line);
    this.unknown.remove(line);
    return [...this.noted(line, -1), inputKeys.line(line)];
  }

  /** What changes when a line comes or goes. */
  private noted(line: ScriptLine, by: 1 | -1): readonly CraftKey[] {
    const subjects = subjectsOf(line);
    for (const subject of subjects) this.markRepeated(subject, line);
    const { settingPath, section } = line;
    if (settingPath !== null && section.pack !== null) tally(this.overlaid, settingPath, by);
    const uses = namesUsedBy(line).filter((name) => tally(this.used, name, by));
    const counted = this.counted(line, by);
    return [...subjects, ...widerKeys(line), ...counted, ...(uses.length === 0 ? [] : [inputKeys.uses])];
  }

  private markRepeated(subject: LineSubject, { statement }: ScriptLine): void {
    if (statement.kind === 'include' || subject === inputKeys.acceptance || subject === inputKeys.overlay)
      return;
    if (this.index.isRepeated(subject)) this.repeated.set(subject, subject);
    else this.repeated.delete(subject);
  }

  /** Keeps count of the collections' members and of the groups that lines name. */
  private counted(line: ScriptLine, by: 1 | -1): readonly CraftKey[] {
    const path = pathOfLine(line);
    if (path === null) return [];
    const changed: CraftKey[] = [];
    const group = path.slice(0, path.indexOf('.') < 0 ? undefined : path.indexOf('.'));
    if (tally(this.groups, group, by)) changed.push(inputKeys.group(group));
    if (this.isBoardText && group === ownGroup) changed.push(inputKeys.unsaid);
    for (const { collection, member } of membershipsIn(path, this.catalog)) {
      const members = this.members.get(collection) ?? new Map<string, number>();
      this.members.set(collection, members);
      if (tally(members, member, by)) changed.push(inputKeys.members(collection));
      if (line.statement.kind === 'section') changed.push(inputKeys.headers(collection));
    }
    return changed;
  }
}

/** What changes with a line besides its subject. */
function widerKeys({ statement, settingPath, section }: ScriptLine): readonly CraftKey[] {
  if (statement.kind === 'constant') return [inputKeys.constants];
  // What holds for every pack holds only as long as no line says otherwise for one of them.
  return settingPath === null || section.pack === null ? [] : [inputKeys.setting(settingPath)];
}

/** Counts up or down; true when the name came or went. */
function tally(counts: Map<string, number>, name: string, by: 1 | -1): boolean {
  const before = counts.get(name) ?? 0;
  const after = before + by;
  if (after <= 0) counts.delete(name);
  else counts.set(name, after);
  return (before === 0) !== after <= 0;
}
