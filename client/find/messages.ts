import type { FindResult, TypedHolds } from '../../server/src/lsp/values-protocol';
import type { MoveName } from '../../server/src/sheet/find/wish';

/** What the pilot has chosen; the page keeps it. */
export interface FindChoices {
  readonly packs: readonly string[];
  readonly holds: TypedHolds;
  readonly moves: readonly MoveName[];
}

/** Extension to page. */
export type ToFind =
  | { readonly kind: 'script'; readonly name: string; readonly packs: readonly string[] }
  | { readonly kind: 'found'; readonly found: FindResult }
  /** By hold, as the end of a sentence. */
  | {
      readonly kind: 'faults';
      readonly faults: readonly { readonly hold: keyof TypedHolds; readonly why: string }[];
    }
  /** Nothing comes of it; `why` is a sentence. */
  | { readonly kind: 'nothing'; readonly why: string }
  /** A proposal stands in the script now. */
  | { readonly kind: 'written'; readonly title: string };

/** Page to extension. */
export type FromFind =
  | { readonly kind: 'ready' }
  | { readonly kind: 'find'; readonly chosen: FindChoices }
  | { readonly kind: 'stop' }
  /** Lines for these settings, to be filled in. */
  | { readonly kind: 'write-lines'; readonly paths: readonly string[] }
  | { readonly kind: 'write'; readonly id: string };
