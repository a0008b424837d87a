import { isBlank } from './characters';
import type { ListingLine } from './line';

const longest = 400;
const leastBranches = 2;

/** Where lines draw a tree, blanks stand in place of the drawing: what is further in belongs to what is above it. */
export function withoutTrees(lines: readonly ListingLine[]): readonly ListingLine[] {
  for (const branchOf of [drawnBranch, plainBranch]) {
    const lengths = lines.map(({ text }) => (text.length > longest ? 0 : branchOf(text)));
    if (lengths.filter((length) => length > 0).length >= leastBranches)
      return lines.map((line, index) => line.blanked(lengths[index] ?? 0));
  }
  return lines;
}

const bars: ReadonlySet<string> = new Set(['\u2502', '\u2503', '\u2551']);
const corners: ReadonlySet<string> = new Set([
  ...['\u251c', '\u2514', '\u2523', '\u2517', '\u2560', '\u255a', '\u2570'],
]);
const dashes: ReadonlySet<string> = new Set(['\u2500', '\u2501', '\u2550', '\u2574']);

/** How long the drawing before a name is, in signs that are made for it: `\u2502   \u251c\u2500\u2500 `; 0 where there is none. */
function drawnBranch(text: string): number {
  const corner = afterAll(text, 0, bars);
  if (!corners.has(text[corner] ?? '')) return 0;
  const end = afterAll(text, corner + 1, dashes);
  return /^[^\s\u2500-\u257f]/u.test(text.slice(end, end + 1)) ? end : 0;
}

const plainBars: ReadonlySet<string> = new Set(['|']);

/** The same in plain signs: `|   +-- `. */
function plainBranch(text: string): number {
  const at = afterAll(text, 0, plainBars);
  const corner = text.startsWith('--', at) ? at - 1 : at;
  if (!/^[|+`]-- \S/.test(text.slice(corner, corner + 5))) return 0;
  return corner + '+-- '.length;
}

/** Where blanks and these signs end. */
function afterAll(text: string, from: number, signs: ReadonlySet<string>): number {
  let end = from;
  while (end < text.length && (isBlank(text[end]) || signs.has(text[end] ?? ''))) end += 1;
  return end;
}
