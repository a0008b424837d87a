import type { Line } from './line';

/** Lines that draw a tree up to a name, in signs made for it or in plain ones. */
const branch =
  /^[\s\u2502\u2503\u2551]*[\u251c\u2514\u2523\u2517\u2560\u255a\u2570][\u2500\u2501\u2550\u2574]*\s?(?=[^\s\u2500-\u257f])/u;
const plainBranch = /^(?:\|?\s{2,})*\|?\s*(?:[|+`]--)\s(?=\S)/u;

const leastBranches = 2;

/** Where lines draw a tree, blanks stand in place of the drawing: what is further in belongs to what is above it. */
export function withoutTrees(lines: readonly Line[]): readonly Line[] {
  for (const drawing of [branch, plainBranch]) {
    const lengths = lines.map(({ text }) =>
      text.length > longest ? 0 : (drawing.exec(text)?.[0].length ?? 0),
    );
    if (lengths.filter((length) => length > 0).length >= leastBranches)
      return lines.map((line, index) => line.blanked(lengths[index] ?? 0));
  }
  return lines;
}

const longest = 400;
