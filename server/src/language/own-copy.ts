/**
 * A string in memory of its own. A piece that is cut out of a string keeps the whole of it, and one that was put
 * together keeps its parts: of what is kept by the hundred thousand, only this is as small as it looks.
 */
export function ownCopy(text: string): string {
  const middle = text.length >> 1;
  return [text.slice(0, middle), text.slice(middle)].join('');
}
