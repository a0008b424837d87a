import { type Dialect, splitCells } from './split-cells';

const separators = [';', '\t', ',', ' '] as const;

/** A cell that says nothing: an empty one, or a word that loggers write for it. */
export const missingCell = /^(?:|-|[+-]?nan|[+-]?inf(?:inity)?|null|none|n\/?a|nil|missing)$/i;

const numberCells = {
  point: /^[+-]?(?:\d+(?:\.\d*)?|\.\d+)(?:e[+-]?\d+)?$/i,
  comma: /^[+-]?(?:\d+(?:,\d*)?|,\d+)(?:e[+-]?\d+)?$/i,
};

export function isNumberCell(text: string, { decimalComma }: Dialect): boolean {
  return (decimalComma ? numberCells.comma : numberCells.point).test(text);
}

/** The numbers of a vector as they are written, of `[0.1, 0.2]` or `(1 2 3)`; null for any other cell. */
export function vectorParts(text: string): readonly string[] | null {
  if (!/^[[(]/.test(text) || !/[\])]$/.test(text)) return null;
  const inside = text.slice(1, -1).trim();
  return /^[-+0-9.eE,;\s]+$/.test(inside) ? inside.split(/[\s,;]+/) : null;
}

/** Whether a cell holds what a row of measurements may hold: a number, a vector of them, nothing. */
export function isMeasured(text: string, dialect: Dialect): boolean {
  return missingCell.test(text) || isNumberCell(text, dialect) || vectorParts(text) !== null;
}

/**
 * How these lines are written: with the separator that splits most of them into equally many cells, in the order in
 * which a separator is least likely to be part of a cell.
 */
export function dialectOf(lines: readonly string[]): Dialect {
  const ways = separators.map((separator) => {
    const counts = lines.map((line) => splitCells(line, { separator, decimalComma: false }).length);
    const usual = mostFrequent(counts);
    return { separator, usual, share: counts.filter((count) => count === usual).length / lines.length };
  });
  const tables = ways.filter(({ usual }) => usual > 1);
  const found = tables.find(({ share }) => share > 0.8) ?? best(tables);
  const separator = found?.separator ?? ',';
  return { separator, decimalComma: separator !== ',' && hasDecimalCommas(lines, separator) };
}

function best<T extends { readonly share: number }>(ways: readonly T[]): T | undefined {
  return [...ways].sort((one, other) => other.share - one.share)[0];
}

function hasDecimalCommas(lines: readonly string[], separator: Dialect['separator']): boolean {
  const cells = lines.flatMap((line) => splitCells(line, { separator, decimalComma: false }));
  const withComma = cells.filter((cell) => /^[+-]?\d*,\d+(?:e[+-]?\d+)?$/i.test(cell)).length;
  const withPoint = cells.filter((cell) => /^[+-]?\d*\.\d+(?:e[+-]?\d+)?$/i.test(cell)).length;
  return withComma > withPoint;
}

/** Of those that come equally often, the largest. */
export function mostFrequent(numbers: readonly number[]): number {
  const counts = new Map<number, number>();
  for (const number of numbers) counts.set(number, (counts.get(number) ?? 0) + 1);
  let [found, most] = [0, 0];
  for (const [number, count] of counts)
    if (count > most || (count === most && number > found)) [found, most] = [number, count];
  return found;
}
