import type { Problem } from '../language/ast';
import type { ScriptLine } from '../language/script-line';
import { inputKeys } from './keys';

/** So many lines with problems are answered for together. */
const together = 16;

/** Where a line with problems is known. */
interface Standing {
  /** Never used for another line. */
  readonly key: string;
  /** The key of the stretch that it belongs to. */
  readonly stretch: string;
}

/** The lines of a script with problems that show without the rest of the craft, a few together. */
export class WrongLines {
  readonly problems = new Map<ScriptLine, readonly Problem[]>();
  private readonly standings = new Map<ScriptLine, Standing>();
  private readonly lines = new Map<string, Set<ScriptLine>>();
  private last = 0;

  /** Stretches of these lines, each under the key that changes when a line comes to it or goes. */
  get stretches(): ReadonlyMap<string, ReadonlySet<ScriptLine>> {
    return this.lines;
  }

  keyOf(line: ScriptLine): string {
    const standing = this.standings.get(line);
    if (standing === undefined) throw new Error('the line has no problem by itself');
    return standing.key;
  }

  add(line: ScriptLine, problems: readonly Problem[], changed: Set<string>): void {
    this.last += 1;
    const stretch = inputKeys.wrongStretch(Math.floor(this.last / together));
    this.problems.set(line, problems);
    this.standings.set(line, { key: inputKeys.wrongLine(this.last), stretch });
    const lines = this.lines.get(stretch);
    if (lines === undefined) this.lines.set(stretch, new Set([line]));
    else lines.add(line);
    changed.add(stretch);
  }

  remove(line: ScriptLine, changed: Set<string>): void {
    const standing = this.standings.get(line);
    if (standing === undefined) return;
    const { key, stretch } = standing;
    this.problems.delete(line);
    this.standings.delete(line);
    const lines = this.lines.get(stretch);
    lines?.delete(line);
    if (lines?.size === 0) this.lines.delete(stretch);
    changed.add(key).add(stretch);
  }
}
