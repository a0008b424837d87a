import type { Answers } from '../craft/answers';

/** How many items, or stretches of items, are answered for together. */
const together = 8;

const nothing: readonly never[] = [];

/**
 * What there is to say of each item of a list, in its order. When something that one answer read changes, only what
 * stands near it is asked anew, however long the list is. `items` is a computed answer, or noted what it read.
 * `thinned` leaves out, of what is said of some of them, what the whole does not need.
 */
export function perItem<I, T>(
  cells: Pick<Answers, 'get'>,
  key: string,
  items: () => readonly I[],
  of: (item: I) => readonly T[],
  thinned: (said: readonly T[]) => readonly T[] = (said) => said,
): readonly T[] {
  const stretch = (from: number, to: number): readonly T[] =>
    // One stretch of memory: what is put together with `+` keeps its parts, and these names are kept.
    cells.get([key, ' ', from, '..', to].join(''), () => {
      if (to - from <= together) return orNothing(thinned(items().slice(from, to).flatMap(of)));
      let step = together;
      while (step * together < to - from) step *= together;
      const found: T[] = [];
      for (let at = from; at < to; at += step) found.push(...stretch(at, Math.min(to, at + step)));
      return orNothing(thinned(found));
    });
  return stretch(0, items().length);
}

/** Of most there is nothing to say: one empty list for all takes no room. */
function orNothing<T>(found: readonly T[]): readonly T[] {
  return found.length === 0 ? nothing : found;
}
