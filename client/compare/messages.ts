import type { Comparison } from '../../server/src/sheet/compare/compare';
import type { Target } from '../../server/src/sheet/target';

/** Extension to page. */
export type ToCompare =
  | { readonly kind: 'comparison'; readonly comparison: Comparison }
  /** One of the two can't be read any more; `why` is a sentence. */
  | { readonly kind: 'nothing'; readonly why: string };

/** Page to extension. */
export type FromCompare = { readonly kind: 'ready' } | { readonly kind: 'go'; readonly target: Target };
