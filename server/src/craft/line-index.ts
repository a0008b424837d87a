import type { ScriptLine } from '../language/script-line';

/** Which lines of a script say something about a key. Most keys have one line, which is then kept bare. */
export class LineIndex {
  private readonly lines = new Map<string, ScriptLine | ScriptLine[]>();

  get(key: string): readonly ScriptLine[] {
    const found = this.lines.get(key);
    if (found === undefined) return [];
    return Array.isArray(found) ? found : [found];
  }

  has(key: string): boolean {
    return this.lines.has(key);
  }

  isRepeated(key: string): boolean {
    return Array.isArray(this.lines.get(key));
  }

  add(key: string, line: ScriptLine): void {
    const found = this.lines.get(key);
    if (found === undefined) this.lines.set(key, line);
    else if (Array.isArray(found)) found.push(line);
    else this.lines.set(key, [found, line]);
  }

  remove(key: string, line: ScriptLine): void {
    const rest = this.get(key).filter((other) => other !== line);
    const [only] = rest;
    if (only === undefined) this.lines.delete(key);
    else this.lines.set(key, rest.length === 1 ? only : rest);
  }

  keys(): Iterable<string> {
    return this.lines.keys();
  }
}
