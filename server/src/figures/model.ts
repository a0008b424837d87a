import { Lacking } from '../craft/lacking';
import { type CraftView, viewQuery } from '../craft/view';
import type { Key } from '../query/key-map';

/** Something that several figures are computed from, with what had to be assumed for it, in words. */
export interface Model<T> {
  readonly value: T;
  readonly assumed: readonly string[];
}

/**
 * Makes a model of a craft with the view's pack; null where an input is missing, of which the view takes note. Kept
 * until an input changes, so that the figures that share it compute it once.
 *
 *     const airOf = model('air', (view) => …);
 *     airOf(view)?.value.density;
 */
export function model<K extends Key, T>(
  name: string,
  compute: (view: CraftView, ...key: K) => { readonly value: T; readonly assumed?: readonly string[] } | null,
): (view: CraftView, ...key: K) => Model<T> | null {
  return askedOrLacking(name, (view, ...key: K): Model<T> | null => {
    const computed = compute(view, ...key);
    // Nothing is concluded from a line that can't be read: it has its own finding.
    if (computed === null || view.unreadable.length > 0) return null;
    return { value: computed.value, assumed: [...view.assumedInWords, ...(computed.assumed ?? [])] };
  });
}

/** A query of which, where nothing comes of it, whoever asks lacks what it lacks. */
export function askedOrLacking<K extends Key, V extends object>(
  name: string,
  compute: (view: CraftView, ...key: K) => V | null,
): (view: CraftView, ...key: K) => V | null {
  const query = viewQuery(
    name,
    (view, ...key: K): V | Lacking => compute(view, ...key) ?? view.lacking,
    (one, other) =>
      one === other || (one instanceof Lacking && other instanceof Lacking && one.isSame(other)),
  );
  return (view, ...key) => {
    const found = query(view, ...key);
    if (!(found instanceof Lacking)) return found;
    view.lacks(found);
    return null;
  };
}
