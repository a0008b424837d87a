import type { CraftView } from '../craft/view';

/** Something that several figures are computed from, with what had to be assumed for it, in words. */
export interface Model<T> {
  readonly value: T;
  readonly assumed: readonly string[];
}

/**
 * A model of a craft with the view's pack; null where an input is missing. Kept until an input changes, so that
 * the figures that share it compute it once.
 */
export function modelOf<T>(
  asking: CraftView,
  id: string,
  compute: (view: CraftView) => { readonly value: T; readonly assumed?: readonly string[] } | null,
): Model<T> | null {
  return asking.kept('model', id, () => {
    const view = asking.anew(); // its own, so that what it assumes is this model's alone
    const computed = compute(view);
    // Nothing is concluded from a line that can't be read: it has its own finding.
    if (computed === null || view.unreadable.length > 0) return null;
    return { value: computed.value, assumed: [...view.assumedInWords, ...(computed.assumed ?? [])] };
  });
}
