import type { BuildSheet } from '../../server/src/sheet/build-sheet';
import type { Target } from '../../server/src/sheet/target';

/** Extension to page. */
export type ToSheet =
  | { readonly kind: 'sheet'; readonly sheet: BuildSheet }
  /** No craft script is open, or the checks are not running and will not come back by themselves. */
  | { readonly kind: 'nothing'; readonly why: 'no-script' | 'stopped' };

/** Page to extension. */
export type FromSheet =
  /** The page listens now; send what there is. */
  | { readonly kind: 'ready' }
  | { readonly kind: 'go'; readonly target: Target }
  | { readonly kind: 'pack'; readonly pack: string }
  | { readonly kind: 'new-script' };
