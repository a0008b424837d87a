import type { Statement } from './ast';
import { parseLine } from './parser';

/** A longer line is hardly there twice, and what it was at every keystroke would be kept. */
const longestKept = 2000;

/** What a line says: its text and what that means. Lines with the same text share one. */
export interface LineContent {
  readonly text: string;
  readonly statement: Statement;
}

/**
 * What lines say by their text, so that equal lines are parsed and kept once. Two generations: when the
 * young one is full it becomes the old one, so the cache stays bounded without keeping count of use.
 */
export class StatementCache {
  private young = new Map<string, LineContent>();
  private old = new Map<string, LineContent>();

  constructor(private readonly capacity = 4096) {}

  /** `isOwn`: the line sets something that only the board knows. */
  parse(text: string, isOwn = false): LineContent {
    if (text.length > longestKept) return contentOf(text, isOwn);
    // The same text says something else there; a line feed stands in no line.
    const key = isOwn ? `\n${text}` : text;
    const known = this.young.get(key) ?? this.old.get(key);
    if (known !== undefined) return known;
    const fresh = contentOf(text, isOwn);
    if (this.young.size >= this.capacity) {
      this.old = this.young;
      this.young = new Map();
    }
    this.young.set(key, fresh);
    return fresh;
  }
}

function contentOf(text: string, isOwn: boolean): LineContent {
  return { text, statement: parseLine(text, isOwn) };
}
