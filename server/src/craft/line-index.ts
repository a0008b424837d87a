import type { ScriptLine } from '../language/script-line';
import { KeyMap } from '../query/key-map';
import type { LineSubject } from './keys';

type LinesOfSubject = ScriptLine | Set<ScriptLine>;

/** Which lines of a script say something about a subject. Most subjects have one line, which is then kept bare. */
export class LineIndex {
  private readonly lines = new KeyMap<LineSubject, LinesOfSubject>();

  get(subject: LineSubject): readonly ScriptLine[] {
    const found = this.lines.get(subject);
    return found === undefined ? [] : found instanceof Set ? [...found] : [found];
  }

  has(subject: LineSubject): boolean {
    return this.lines.has(subject);
  }

  get isEmpty(): boolean {
    return this.lines.isEmpty;
  }

  isRepeated(subject: LineSubject): boolean {
    return this.lines.get(subject) instanceof Set;
  }

  add(subject: LineSubject, line: ScriptLine): void {
    const found = this.lines.get(subject);
    if (found === undefined) this.lines.set(subject, line);
    else if (found instanceof Set) found.add(line);
    else this.lines.set(subject, new Set([found, line]));
  }

  remove(subject: LineSubject, line: ScriptLine): void {
    const found = this.lines.get(subject);
    if (found === line) this.lines.delete(subject);
    if (!(found instanceof Set) || !found.delete(line)) return;
    const [last] = found;
    if (found.size === 1 && last !== undefined) this.lines.set(subject, last);
  }
}
