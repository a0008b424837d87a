import type { Position } from '../../language/document';

/** How the client counts characters in a line. */
export type Encoding = 'utf-8' | 'utf-16' | 'utf-32';

/** What the client can do best with what the server does: UTF-16 costs nothing here, so it wins where offered. */
export function chosenEncoding(offered: readonly string[]): Encoding {
  if (offered.length === 0 || offered.includes('utf-16')) return 'utf-16';
  if (offered.includes('utf-8')) return 'utf-8';
  return offered.includes('utf-32') ? 'utf-32' : 'utf-16';
}

/** A UTF-16 offset in a line, counted as the client counts. */
export function outgoing(text: string, offset: number, encoding: Encoding): number {
  if (encoding === 'utf-16') return offset;
  let counted = 0;
  for (const character of text.slice(0, offset)) counted += width(character, encoding);
  return counted;
}

/** The client's count in a line as a UTF-16 offset; inside a character, its start. Past the end, the end. */
function incoming(text: string, counted: number, encoding: Encoding): number {
  if (encoding === 'utf-16') return counted;
  let offset = 0;
  let sum = 0;
  for (const character of text) {
    sum += width(character, encoding);
    if (sum > counted) return offset;
    offset += character.length;
  }
  return offset;
}

function width(character: string, encoding: Encoding): number {
  if (encoding === 'utf-32') return 1;
  const code = character.codePointAt(0) ?? 0;
  return code < 0x80 ? 1 : code < 0x800 ? 2 : code < 0x10000 ? 3 : 4;
}

/** Something with lines: a script's document. */
export interface LineSource {
  lineAt(number: number): { readonly text: string } | undefined;
}

export function toClient(lines: LineSource, { line, character }: Position, encoding: Encoding): Position {
  // Nothing to count: the line need not be looked up.
  if (encoding === 'utf-16') return { line, character };
  return { line, character: outgoing(lines.lineAt(line)?.text ?? '', character, encoding) };
}

export function fromClient(lines: LineSource, { line, character }: Position, encoding: Encoding): Position {
  return { line, character: incoming(lines.lineAt(line)?.text ?? '', character, encoding) };
}
