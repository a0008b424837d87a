import type { Stretch } from '../listing';
import type { ListingLine } from './line';

/** What opens a comment that goes on over lines, with what closes it. */
const pairs = [
  ['/*', '*/'],
  ['<!--', '-->'],
  ['--[[', ']]'],
  ['(*', '*)'],
  ['#|', '|#'],
] as const;

/** Lines without comments that go on over lines, and where those stood. */
export interface Uncommented {
  readonly lines: readonly ListingLine[];
  readonly comments: readonly Stretch[];
}

const mostLines = 400;

/**
 * Takes out comments that a mark at the start of a line opens and one at the end of it, or of a later one, closes: what
 * looks like a setting in them is none.
 */
export function withoutBlockComments(lines: readonly ListingLine[]): Uncommented {
  const comments: Stretch[] = [];
  const kept: ListingLine[] = [];
  for (let at = 0; at < lines.length; at += 1) {
    const line = lines[at];
    if (line === undefined) break;
    const end = endOfComment(lines, at);
    if (end === null) kept.push(line);
    else {
      comments.push({ start: line.whole().start, end: (lines[end] ?? line).whole().end });
      at = end;
    }
  }
  return comments.length === 0 ? { lines, comments } : { lines: kept, comments };
}

/** In which line the comment ends that begins with this one; null where none does. */
function endOfComment(lines: readonly ListingLine[], from: number): number | null {
  const first = lines[from]?.text.trim() ?? '';
  const pair = pairs.find(([open]) => first.startsWith(open));
  if (pair === undefined) return null;
  const [open, close] = pair;
  const inFirst = first.indexOf(close, open.length);
  if (inFirst >= 0) return inFirst + close.length === first.length ? from : null;
  for (let at = from + 1; at < lines.length && at - from < mostLines; at += 1) {
    const text = lines[at]?.text.trim() ?? '';
    const end = text.indexOf(close);
    if (end >= 0) return end + close.length === text.length ? at : null;
  }
  return null;
}
