import type { DrawnSheet } from '../../server/src/sheet/drawn-sheet';
import type { Target } from '../../server/src/sheet/target';
import type { PageState } from './state';

/** Where the cursor stands in a script, and which parameter its line sets, by its catalogue name. */
export interface CursorPlace {
  readonly uri: string;
  readonly line: number;
  readonly parameter: string | null;
}

/** Extension to page. */
export type ToSheet =
  | { readonly kind: 'sheet'; readonly sheet: DrawnSheet }
  /** What the pilot had changed about the page; comes before the first sheet. */
  | { readonly kind: 'state'; readonly state: PageState }
  /** Where the cursor stands now. */
  | { readonly kind: 'cursor'; readonly place: CursorPlace | null }
  /** No craft script is open, or the checks are not running and will not come back by themselves. */
  | { readonly kind: 'nothing'; readonly why: 'no-script' | 'stopped' };

/** Page to extension. */
export type FromSheet =
  /** The page listens now; send what there is. */
  | { readonly kind: 'ready' }
  | { readonly kind: 'go'; readonly target: Target }
  | { readonly kind: 'pack'; readonly pack: string }
  | { readonly kind: 'state'; readonly state: PageState }
  | { readonly kind: 'new-script' };
