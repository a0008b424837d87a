/**
 * The text that bytes stand for, with the byte order mark that may stand in front of it. Nothing is guessed: what
 * was read wrongly would be checked wrongly, and written back so.
 * @throws {Error} whose message says why they are none, as the end of a sentence
 */
export function fileText(bytes: Uint8Array): string {
  if (isWide(bytes)) throw new Error('it is saved as UTF-16: save it as UTF-8');
  if (bytes.includes(0)) throw new Error('it is not a text');
  const text = decoded(bytes);
  if (text !== null) return text;
  const line = firstFaultyLine(bytes);
  throw new Error(`line ${line} is not UTF-8 (is it Latin-1?): save the file as UTF-8`);
}

/** Whether it begins with the mark of UTF-16, in either order of its bytes. */
function isWide([first, second]: Uint8Array): boolean {
  return (first === 0xff && second === 0xfe) || (first === 0xfe && second === 0xff);
}

/** Null where they are not UTF-8. */
function decoded(bytes: Uint8Array): string | null {
  try {
    return new TextDecoder('utf-8', { fatal: true, ignoreBOM: true }).decode(bytes);
  } catch {
    return null;
  }
}

const lineFeed = 0x0a;
const carriageReturn = 0x0d;

/** Counted from 1. What ends a line is never a part of a longer character, so that each line stands by itself. */
function firstFaultyLine(bytes: Uint8Array): number {
  let [line, start] = [1, 0];
  for (const [at, byte] of bytes.entries()) {
    const isEnd = byte === lineFeed || (byte === carriageReturn && bytes[at + 1] !== lineFeed);
    if (!isEnd) continue;
    if (decoded(bytes.subarray(start, at)) === null) return line;
    [line, start] = [line + 1, at + 1];
  }
  return line;
}
