import type { Catalog } from '../catalog/catalog';
import type { Problem } from '../language/ast';
import { Document, type DocumentEdit, type LineChange } from '../language/document';
import type { ScriptLine } from '../language/script-line';
import { StatementCache } from '../language/statement-cache';
import { inputKeys, keysOf, subjectOf } from './keys';
import { checkLine, isDynamicLine } from './line-check';
import { LineIndex } from './line-index';
import { differingKeys, MeantLines } from './meant-lines';
import { membershipsIn } from './memberships';
import { WrongLines } from './wrong-lines';

/**
 * One script as it stands, with an index of what its lines say and what is wrong with each by itself.
 * It moves forward with each edit and tells which keys changed; the cost follows the edit, not the script.
 */
export class Script {
  private current: Document;
  private readonly index = new LineIndex();
  private readonly wrong = new WrongLines();
  private readonly dynamic = new Map<string, number>();
  /** Keys that came to the dynamic ones, or went, with the edit that is being taken in. */
  private readonly dynamicMoved = new Set<string>();
  private readonly repeated = new Set<string>();
  /** Collection -> member -> how many lines name it. */
  private readonly members = new Map<string, Map<string, number>>();
  private readonly groups = new Map<string, number>();
  /** Path -> how many lines set it for one pack only. */
  private readonly overlaid = new Map<string, number>();
  private readonly unknown: MeantLines;

  constructor(
    readonly uri: string,
    text: string,
    private readonly catalog: Catalog,
    said = new StatementCache(),
  ) {
    this.current = Document.of(text, said);
    this.unknown = new MeantLines(catalog, (line) => this.lineNumber(line));
    const changed = new Set<string>();
    for (const line of this.current.lines()) this.add(line, changed);
    this.markRepeated(changed);
    this.dynamicMoved.clear();
  }

  get document(): Document {
    return this.current;
  }

  /** Applies edits one after the other and gives the keys of all that changed. */
  edit(edits: Iterable<DocumentEdit>): ReadonlySet<string> {
    const changed = new Set<string>();
    const meant = this.unknown.byKey;
    for (const edit of edits) {
      const { document, change } = this.current.edit(edit);
      this.current = document;
      this.follow(change, changed);
    }
    this.markRepeated(changed);
    for (const key of differingKeys(meant, this.unknown.byKey)) {
      changed.add(key);
      for (const { collection } of membershipsIn(inputKeys.pathIn(key), this.catalog))
        changed.add(inputKeys.members(collection));
    }
    if (this.dynamicMoved.size > 0) changed.add(inputKeys.dynamic);
    this.dynamicMoved.clear();
    return changed;
  }

  /** The line whose unknown name was surely meant to set what a key names. */
  meantBy(key: string): ScriptLine | undefined {
    return this.unknown.byKey.get(key);
  }

  lines(key: string): readonly ScriptLine[] {
    const found = this.index.get(key);
    if (found.length < 2) return found;
    return [...found].sort((one, other) => this.lineNumber(one) - this.lineNumber(other));
  }

  has(key: string): boolean {
    return this.index.has(key);
  }

  lineNumber(line: ScriptLine): number {
    return this.current.lineNumberOf(line);
  }

  /** Lines with problems that show without the rest of the craft. */
  get problems(): ReadonlyMap<ScriptLine, readonly Problem[]> {
    return this.wrong.problems;
  }

  /** The same lines in groups of stretches, all under keys that change with what belongs to them. */
  get wrongGroups(): ReadonlyMap<string, ReadonlyMap<string, ReadonlySet<ScriptLine>>> {
    return this.wrong.groups;
  }

  /** The key under which a line with problems is known; it changes when the line goes. */
  keyOfWrong(line: ScriptLine): string {
    return this.wrong.keyOf(line);
  }

  /** Keys of lines that can only be checked with the rest of the craft. */
  dynamicKeys(): Iterable<string> {
    return this.dynamic.keys();
  }

  /** Keys that more than one line of this script sets for the same pack or for all. */
  get repeatedKeys(): ReadonlySet<string> {
    return this.repeated;
  }

  /** Whether lines set a path for one pack only, or surely mean to. */
  isOverlaid(path: string): boolean {
    return this.overlaid.has(path) || this.unknown.isOverlaid(path);
  }

  /** The members of a collection that lines name, also those that a misspelt name surely means. */
  membersOf(collection: string): readonly string[] {
    const meant = [...this.unknown.byKey.keys()]
      .flatMap((key) => membershipsIn(inputKeys.pathIn(key), this.catalog))
      .flatMap((one) => (one.collection === collection ? [one.member] : []));
    return [...new Set([...(this.members.get(collection)?.keys() ?? []), ...meant])];
  }

  /** How many members of a collection lines name. */
  memberCount(collection: string): number {
    return this.members.get(collection)?.size ?? 0;
  }

  /** Whether any line says something in a group: a script that says anything under `craft` is a whole craft. */
  hasGroup(group: string): boolean {
    return this.groups.has(group);
  }

  /** Paths that the script sets, for all packs or for some; costs as much as the script is long. */
  settingPaths(): ReadonlySet<string> {
    const prefix = inputKeys.setting('');
    const keys = [...this.index.keys()].filter((key) => key.startsWith(prefix));
    return new Set(keys.map(inputKeys.pathIn));
  }

  constantNames(): readonly string[] {
    const prefix = inputKeys.constant('');
    return [...this.index.keys()]
      .filter((key) => key.startsWith(prefix))
      .map((key) => key.slice(prefix.length));
  }

  private follow({ removed, added }: LineChange, changed: Set<string>): void {
    // What comes first: a key that stays is never without a line. A map keeps what was deleted for long, and to put
    // the same key back at each keystroke would make every look-up of it walk past all that.
    for (const line of added) this.add(line, changed);
    for (const line of removed) this.remove(line, changed);
  }

  private add(line: ScriptLine, changed: Set<string>): void {
    for (const key of keysOf(line)) {
      this.index.add(key, line);
      changed.add(key);
    }
    this.count(line, 1, changed);
    const { problems, isDynamic, isUnknown } = checkLine(line, this.catalog);
    if (problems.length > 0) this.wrong.add(line, problems, changed);
    if (isDynamic) this.countDynamic(line, 1);
    if (isUnknown === true) this.unknown.add(line);
  }

  private remove(line: ScriptLine, changed: Set<string>): void {
    for (const key of keysOf(line)) {
      this.index.remove(key, line);
      changed.add(key);
    }
    this.count(line, -1, changed);
    this.wrong.remove(line, changed);
    this.unknown.remove(line);
    if (isDynamicLine(line, this.catalog)) this.countDynamic(line, -1);
  }

  /** Looks at keys that have got lines or lost them. */
  private markRepeated(changed: Set<string>): void {
    for (const key of changed) {
      if (!/^(set|let|section) /.test(key)) continue;
      const is = this.index.isRepeated(key);
      if (this.repeated.has(key) || is) changed.add(inputKeys.repeated);
      if (is) this.repeated.add(key);
      else this.repeated.delete(key);
    }
  }

  private countDynamic(line: ScriptLine, by: 1 | -1): void {
    const [key] = keysOf(line);
    if (key === undefined || !tally(this.dynamic, key, by)) return;
    // What goes and comes back in one edit has not moved.
    if (!this.dynamicMoved.delete(key)) this.dynamicMoved.add(key);
  }

  /** Keeps count of the collections' members and of the groups that lines name. */
  private count(line: ScriptLine, by: 1 | -1, changed: Set<string>): void {
    const path = subjectOf(line);
    if (path === null) return;
    if (line.section.pack !== null && line.settingPath !== null) tally(this.overlaid, line.settingPath, by);
    const group = path.slice(0, path.indexOf('.') < 0 ? undefined : path.indexOf('.'));
    if (tally(this.groups, group, by)) changed.add(inputKeys.group(group));
    for (const { collection, member } of membershipsIn(path, this.catalog)) {
      const members = this.members.get(collection) ?? new Map<string, number>();
      this.members.set(collection, members);
      if (tally(members, member, by)) changed.add(inputKeys.members(collection));
    }
  }
}

/** Counts up or down; true when the name came or went. */
function tally(counts: Map<string, number>, name: string, by: 1 | -1): boolean {
  const before = counts.get(name) ?? 0;
  const after = before + by;
  if (after <= 0) counts.delete(name);
  else counts.set(name, after);
  return (before === 0) !== after <= 0;
}
