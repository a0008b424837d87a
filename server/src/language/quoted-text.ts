/** A text in double quotes, with what would end it early escaped. */
export function quoted(text: string): string {
  return `"${text.replace(/["\\]/g, (character) => `\\${character}`)}"`;
}

/** A text in double quotes as it was read. */
export interface QuotedText {
  readonly text: string;
  /** Behind its closing quote; the end of the line where none closes it. */
  readonly end: number;
  readonly isClosed: boolean;
}

/** Reads a text whose opening quote stands at `start`. Of backslashes only those before a quote or another one count. */
export function readQuoted(line: string, start: number): QuotedText {
  let text = '';
  let from = start + 1;
  for (let at = from; at < line.length; at += 1) {
    const character = line[at];
    if (character === '"') return { text: text + line.slice(from, at), end: at + 1, isClosed: true };
    const isEscape = character === '\\' && (line[at + 1] === '"' || line[at + 1] === '\\');
    if (!isEscape) continue;
    text += line.slice(from, at);
    from = at + 1;
    at += 1;
  }
  return { text: text + line.slice(from), end: line.length, isClosed: false };
}
