import { type CraftView, viewQuery } from '../craft/view';
import type { Key } from '../query/key-map';

/** Something that several figures are computed from, with what had to be assumed for it, in words. */
export interface Model<T> {
  readonly value: T;
  readonly assumed: readonly string[];
}

/**
 * Makes a model of a craft with the view's pack; null where an input is missing. Kept until an input changes, so that
 * the figures that share it compute it once.
 *
 *     const airOf = model('air', (view) => …);
 *     airOf(view)?.value.density;
 */
export function model<K extends Key, T>(
  name: string,
  compute: (view: CraftView, ...key: K) => { readonly value: T; readonly assumed?: readonly string[] } | null,
): (view: CraftView, ...key: K) => Model<T> | null {
  return viewQuery(name, (view, ...key: K) => {
    const computed = compute(view, ...key);
    // Nothing is concluded from a line that can't be read: it has its own finding.
    if (computed === null || view.unreadable.length > 0) return null;
    return { value: computed.value, assumed: [...view.assumedInWords, ...(computed.assumed ?? [])] };
  });
}
