import type { ReadingFault, ReadingTyped } from '../../server/src/lsp/flight-protocol';
import type { BenchCard } from '../../server/src/sheet/bench-card/card';
import type { CardKept, ReadingTaken } from '../../server/src/sheet/bench-card/taken';
import type { Target } from '../../server/src/sheet/target';

/** Extension to page. */
export type ToCard =
  | {
      readonly kind: 'card';
      readonly card: BenchCard;
      readonly taken: CardKept;
      /** Of the script. */
      readonly uri: string;
    }
  | { readonly kind: 'faults'; readonly faults: readonly ReadingFault[] }
  /** What was typed into a field can be a reading, or not: why, in a sentence. */
  | { readonly kind: 'checked'; readonly id: string; readonly typed: string; readonly fault: string | null }
  /** What is on the card by now, with what was taken on it elsewhere. */
  | { readonly kind: 'taken'; readonly taken: CardKept }
  /** These readings are in the script now. */
  | { readonly kind: 'kept'; readonly readings: readonly ReadingTaken[] }
  /** There is no card any more; `why` is a sentence. */
  | { readonly kind: 'nothing'; readonly why: string };

/** Page to extension. */
export type FromCard =
  | { readonly kind: 'ready' }
  | { readonly kind: 'go'; readonly target: Target }
  /** `before`: what was on the card until then. */
  | { readonly kind: 'taken'; readonly before: CardKept; readonly taken: CardKept }
  | { readonly kind: 'check'; readonly id: string; readonly reading: ReadingTyped }
  | { readonly kind: 'keep' }
  | { readonly kind: 'save' };
