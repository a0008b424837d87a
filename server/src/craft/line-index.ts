import type { ScriptLine } from '../language/script-line';
import { KeyMap } from '../query/key-map';
import type { Subject } from './keys';

type Lines = ScriptLine | readonly ScriptLine[];

/** Which lines of a script say something about a subject. Most subjects have one line, which is then kept bare. */
export class LineIndex {
  private readonly lines = new KeyMap<Subject, Lines>();

  get(subject: Subject): readonly ScriptLine[] {
    const found = this.lines.get(subject);
    return found === undefined ? [] : isList(found) ? found : [found];
  }

  has(subject: Subject): boolean {
    return this.lines.has(subject);
  }

  isRepeated(subject: Subject): boolean {
    return this.get(subject).length > 1;
  }

  add(subject: Subject, line: ScriptLine): void {
    this.put(subject, [...this.get(subject), line]);
  }

  remove(subject: Subject, line: ScriptLine): void {
    this.put(
      subject,
      this.get(subject).filter((other) => other !== line),
    );
  }

  private put(subject: Subject, lines: readonly ScriptLine[]): void {
    const [first] = lines;
    if (first === undefined) this.lines.delete(subject);
    else this.lines.set(subject, lines.length === 1 ? first : lines);
  }
}

function isList(lines: Lines): lines is readonly ScriptLine[] {
  return Array.isArray(lines);
}
