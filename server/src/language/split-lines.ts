export type LineEnd = '' | '\n' | '\r\n' | '\r';

export interface SplitLine {
  readonly text: string;
  readonly end: LineEnd;
}

const ends = /\r\n|\n|\r/g;

/** Cuts a text at LF, CRLF and lone CR, and nowhere else. The last line has no end and may be empty. */
export function splitLines(text: string): SplitLine[] {
  const lines: SplitLine[] = [];
  let from = 0;
  for (const match of text.matchAll(ends)) {
    lines.push({ text: text.slice(from, match.index), end: match[0] as LineEnd });
    from = match.index + match[0].length;
  }
  lines.push({ text: text.slice(from), end: '' });
  return lines;
}
