import assert from 'node:assert/strict';
import type { Position, Range } from 'vscode-languageserver-protocol/node';

export type Encoding = 'utf-8' | 'utf-16' | 'utf-32';

/** Places in a text by the words that stand there, counted as a client of some encoding counts. */
export class Columns {
  private readonly lines: readonly string[];

  constructor(
    text: string,
    private readonly encoding: Encoding,
  ) {
    this.lines = text.split(/\r\n|\r|\n/);
  }

  /** Where words stand in a line. */
  range(line: number, words: string): Range {
    const text = this.lines[line] ?? '';
    const from = text.indexOf(words);
    assert.ok(from >= 0, `line ${line} holds ${words}`);
    return { start: this.at(line, from), end: this.at(line, from + words.length) };
  }

  start(line: number, words: string): Position {
    return this.range(line, words).start;
  }

  /** The end of a line. */
  end(line: number): Position {
    return this.at(line, (this.lines[line] ?? '').length);
  }

  /** What stands in a range, for messages and counts. */
  textIn({ start, end }: Range): string {
    const counted = (position: Position) => {
      const text = this.lines[position.line] ?? '';
      for (let at = 0; at <= text.length; at += 1) {
        if (this.count(text.slice(0, at)) === position.character && !endsInsidePair(text, at)) return at;
      }
      throw new assert.AssertionError({ message: `no character starts at ${JSON.stringify(position)}` });
    };
    assert.equal(start.line, end.line);
    return (this.lines[start.line] ?? '').slice(counted(start), counted(end));
  }

  private at(line: number, offset: number): Position {
    return { line, character: this.count((this.lines[line] ?? '').slice(0, offset)) };
  }

  private count(text: string): number {
    if (this.encoding === 'utf-8') return Buffer.byteLength(text, 'utf8');
    return this.encoding === 'utf-16' ? text.length : Array.from(text).length;
  }
}

function endsInsidePair(text: string, at: number): boolean {
  const code = text.charCodeAt(at);
  return code >= 0xdc00 && code <= 0xdfff;
}
