import type { Statement } from './ast';
import { parseLine } from './parser';

/** A longer line is hardly there twice, and what it was at every keystroke would be kept. */
const longestKept = 2000;

/**
 * Statements by the text of their line, so that equal lines are parsed once. Two generations: when the
 * young one is full it becomes the old one, so the cache stays bounded without keeping count of use.
 */
export class StatementCache {
  private young = new Map<string, Statement>();
  private old = new Map<string, Statement>();

  constructor(private readonly capacity = 4096) {}

  parse(text: string): Statement {
    if (text.length > longestKept) return parseLine(text);
    const known = this.young.get(text) ?? this.old.get(text);
    if (known !== undefined) return known;
    const statement = parseLine(text);
    if (this.young.size >= this.capacity) {
      this.old = this.young;
      this.young = new Map();
    }
    this.young.set(text, statement);
    return statement;
  }
}
