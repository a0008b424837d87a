import { ownCopy } from '../language/own-copy';
import type { ScriptLine } from '../language/script-line';

type Lines = ScriptLine | ScriptLine[];

/** So many last words of keys are kept to be shared; then they are gathered anew. */
const mostWords = 4096;

/**
 * Which lines of a script say something about a key. Most keys have one line, which is then kept bare. Keys are kept
 * in two parts, at their last dot: the settings of a section share the first, and those of like sections the second.
 */
export class LineIndex {
  private readonly lines = new Map<string, Map<string, Lines>>();
  private words = new Map<string, string>();

  get(key: string): readonly ScriptLine[] {
    const found = this.find(key);
    if (found === undefined) return [];
    return Array.isArray(found) ? found : [found];
  }

  has(key: string): boolean {
    return this.find(key) !== undefined;
  }

  isRepeated(key: string): boolean {
    return Array.isArray(this.find(key));
  }

  add(key: string, line: ScriptLine): void {
    const found = this.find(key);
    if (found === undefined) this.put(key, line);
    else if (Array.isArray(found)) found.push(line);
    else this.put(key, [found, line]);
  }

  remove(key: string, line: ScriptLine): void {
    const rest = this.get(key).filter((other) => other !== line);
    const [only] = rest;
    if (only !== undefined) this.put(key, rest.length === 1 ? only : rest);
    else this.delete(key);
  }

  *keys(): Iterable<string> {
    for (const [head, below] of this.lines) for (const word of below.keys()) yield head + word;
  }

  private find(key: string): Lines | undefined {
    const at = partAt(key);
    return this.lines.get(key.slice(0, at))?.get(key.slice(at));
  }

  private put(key: string, lines: Lines): void {
    const at = partAt(key);
    const head = key.slice(0, at);
    let below = this.lines.get(head);
    if (below === undefined) {
      below = new Map();
      this.lines.set(ownCopy(head), below);
    }
    below.set(this.sharedWord(key.slice(at)), lines);
  }

  private delete(key: string): void {
    const at = partAt(key);
    const head = key.slice(0, at);
    const below = this.lines.get(head);
    below?.delete(key.slice(at));
    if (below?.size === 0) this.lines.delete(head);
  }

  private sharedWord(word: string): string {
    const known = this.words.get(word);
    if (known !== undefined) return known;
    const own = ownCopy(word);
    if (this.words.size >= mostWords) this.words = new Map();
    this.words.set(own, own);
    return own;
  }
}

/** Where the second part of a key begins: with its last dot. A key without one is all second part. */
function partAt(key: string): number {
  return Math.max(0, key.lastIndexOf('.'));
}
