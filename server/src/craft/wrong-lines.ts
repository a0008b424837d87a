import type { Problem } from '../language/ast';
import type { ScriptLine } from '../language/script-line';
import { inputKeys } from './keys';

/** So many lines with problems are answered for together, and so many stretches of them. */
const together = 16;

/** A few stretches of lines, each under the key that changes when a line comes to it or goes. */
type Stretches = Map<string, Set<ScriptLine>>;

/** Where a line with problems is known. */
interface Standing {
  /** Never used for another line. */
  readonly key: string;
  /** The key of the stretch that it belongs to. */
  readonly stretch: string;
  /** The key of the stretch's group. */
  readonly group: string;
}

/** The lines of a script with problems that show without the rest of the craft, a few together. */
export class WrongLines {
  readonly problems = new Map<ScriptLine, readonly Problem[]>();
  private readonly standings = new Map<ScriptLine, Standing>();
  private readonly grouped = new Map<string, Stretches>();
  private last = 0;

  /** Groups of stretches of these lines, all under keys that change when a line comes to them or goes. */
  get groups(): ReadonlyMap<string, ReadonlyMap<string, ReadonlySet<ScriptLine>>> {
    return this.grouped;
  }

  keyOf(line: ScriptLine): string {
    const standing = this.standings.get(line);
    if (standing === undefined) throw new Error('the line has no problem by itself');
    return standing.key;
  }

  add(line: ScriptLine, problems: readonly Problem[], changed: Set<string>): void {
    this.last += 1;
    const stretch = inputKeys.wrongStretch(Math.floor(this.last / together));
    const group = inputKeys.wrongGroup(Math.floor(this.last / together ** 2));
    this.problems.set(line, problems);
    this.standings.set(line, { key: inputKeys.wrongLine(this.last), stretch, group });
    const stretches: Stretches = this.grouped.get(group) ?? new Map();
    this.grouped.set(group, stretches);
    const lines = stretches.get(stretch);
    if (lines === undefined) stretches.set(stretch, new Set([line]));
    else lines.add(line);
    changed.add(stretch).add(group);
  }

  remove(line: ScriptLine, changed: Set<string>): void {
    const standing = this.standings.get(line);
    if (standing === undefined) return;
    const { key, stretch, group } = standing;
    this.problems.delete(line);
    this.standings.delete(line);
    const stretches = this.grouped.get(group);
    const lines = stretches?.get(stretch);
    lines?.delete(line);
    if (lines?.size === 0) stretches?.delete(stretch);
    if (stretches?.size === 0) this.grouped.delete(group);
    changed.add(key).add(stretch).add(group);
  }
}
