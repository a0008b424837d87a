import { ListingLine } from './line';

const narrowest = 30;
const leastShare = 0.6;
/** How many characters terminals, or screens of phones, show in a line; common practice, no standard. */
const usualWidths: ReadonlySet<number> = new Set([
  32, 40, 48, 60, 64, 72, 79, 80, 96, 100, 119, 120, 128, 132, 160,
]);

/**
 * Lines that a terminal broke at its width, put together again: the longest ones, where what follows most of them is
 * of no form. Null where no line was broken.
 */
export function unwrapped(
  lines: readonly ListingLine[],
  isUnread: (index: number) => boolean,
): readonly ListingLine[] | null {
  const width = widthOf(lines);
  if (width < narrowest) return null;
  const full = lines.flatMap(({ text }, index) =>
    text.length === width && index + 1 < lines.length ? [index] : [],
  );
  const broken = full.filter((index) => isUnread(index + 1) && !isUnread(index));
  if (broken.length === 0 || broken.length < leastShare * full.length) return null;
  // One long line before one of no form is no sign yet, unless it is as wide as terminals are.
  if (broken.length === 1 && !usualWidths.has(width)) return null;
  // One that is whole by chance stays so unless nearly all are broken.
  const joins = new Set(full.length >= 3 ? full : broken);
  const made: ListingLine[] = [];
  for (let index = 0; index < lines.length; index += 1) {
    const first = lines[index];
    if (first === undefined) break;
    const parts: [ListingLine, ...ListingLine[]] = [first];
    while (joins.has(index)) {
      index += 1;
      const next = lines[index];
      if (next !== undefined) parts.push(next);
    }
    made.push(ListingLine.joined(parts, ''));
  }
  return made;
}

/** How long the longest line is. */
export function widthOf(lines: readonly ListingLine[]): number {
  return lines.reduce((width, { text }) => Math.max(width, text.length), 0);
}
