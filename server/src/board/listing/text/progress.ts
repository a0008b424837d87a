import type { ListingLine } from './line';

/** What fills a bar, and what is not filled of it. */
const filling = /^[#=>\-.*\s\u2580-\u259f\u25a0\u25a1]{4,80}$/u;
const brackets = [
  ['[', ']'],
  ['|', '|'],
  ['(', ')'],
  ['<', '>'],
] as const;

/** How far something is, and what. */
interface ProgressText {
  /** What stands before it. */
  readonly of: string;
  readonly isDone: boolean;
}

/**
 * Lines without those that show how far something is: bars of one thing that come again, or the only one, full. Bars
 * with different names before them may be how a listing draws its values.
 */
export function withoutProgress(lines: readonly ListingLine[]): readonly ListingLine[] {
  const bars = lines.map(({ text }) => progressIn(text));
  const found = bars.flatMap((one) => one ?? []);
  if (found.length === 0 || new Set(found.map((one) => one.of)).size > 1) return lines;
  const isOver = found.some(({ isDone }) => isDone);
  return found.length === 1 && !isOver ? lines : lines.filter((_, index) => bars[index] === null);
}

const longest = 200;
const longestName = 40;

/** A bar that fills, with per cent before or behind it; null where none stands in a line. */
function progressIn(line: string): ProgressText | null {
  const text = line.length > longest || !line.includes('%') ? '' : line.trim();
  for (const [open, close] of brackets) {
    const [start, end] = [text.indexOf(open), text.lastIndexOf(close)];
    if (start < 0 || end <= start || !filling.test(text.slice(start + 1, end))) continue;
    const [before, after] = [text.slice(0, start).trim(), text.slice(end + 1).trim()];
    const behind = /^(\d{1,3})(?:[.,]\d)? ?%$/.exec(after);
    const ahead = /(\d{1,3}) ?%$/.exec(before);
    const percent = behind?.[1] ?? (after === '' ? ahead?.[1] : undefined);
    const of = behind === null && ahead !== null ? before.slice(0, ahead.index).trim() : before;
    if (percent !== undefined && of.length <= longestName && !/[=:]/.test(of))
      return { of, isDone: percent === '100' };
  }
  return null;
}
