import type { ReadingFault, ReadingTaken } from '../../server/src/lsp/protocol';
import type { BenchCard } from '../../server/src/sheet/bench-card/card';
import type { Target } from '../../server/src/sheet/target';

/** What the pilot has ticked and written on a card; the extension keeps it. */
export interface CardState {
  readonly ticked: readonly string[];
  readonly readings: readonly ReadingTaken[];
}

export const emptyCard: CardState = { ticked: [], readings: [] };

/** Extension to page. */
export type ToCard =
  | { readonly kind: 'card'; readonly card: BenchCard; readonly state: CardState }
  | { readonly kind: 'faults'; readonly faults: readonly ReadingFault[] }
  /** There is no card any more; `why` is a sentence. */
  | { readonly kind: 'nothing'; readonly why: string };

/** Page to extension. */
export type FromCard =
  | { readonly kind: 'ready' }
  | { readonly kind: 'go'; readonly target: Target }
  | { readonly kind: 'state'; readonly state: CardState }
  | { readonly kind: 'keep' }
  | { readonly kind: 'save' };
