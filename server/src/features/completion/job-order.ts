import type { Catalog } from '../../catalog/catalog';

/**
 * Puts sections in the order in which a pilot sets a craft up: those that the data names first, all others behind
 * them in the order of what they are part of.
 */
export function inJobOrder<T>(
  catalog: Catalog,
  list: readonly T[],
  pathOf: (one: T) => string,
): readonly T[] {
  const { jobOrder } = catalog;
  const places = new Map(jobOrder.map((path, index) => [path, index]));
  const groups = new Map<string, number>();
  for (const [index, path] of jobOrder.entries()) {
    const group = path.split('.')[0] ?? '';
    if (!groups.has(group)) groups.set(group, index);
  }
  const rank = (path: string) =>
    places.get(path) ?? jobOrder.length + (groups.get(path.split('.')[0] ?? '') ?? jobOrder.length);
  return list
    .map((one) => ({ one, rank: rank(pathOf(one)) }))
    .sort((a, b) => a.rank - b.rank)
    .map(({ one }) => one);
}
