import type { Learned } from '../../server/src/lsp/protocol';

/** Extension to page. */
export interface ToLearn {
  readonly kind: 'learned';
  readonly learned: Learned;
  /** Every parameter that a setting may be said to stand for. */
  readonly parameters: readonly string[];
}

/** Page to extension. */
export type FromLearn =
  /** The page listens now. */
  | { readonly kind: 'ready' }
  | {
      readonly kind: 'make';
      readonly name: string;
      readonly confirmed: readonly (readonly [key: string, parameter: string])[];
    };
