import type { Evaluated } from './value';

/** How a name in an expression came out. */
export type NameResult =
  | { readonly kind: 'value'; readonly value: Evaluated }
  /** Set, but its value could not be understood: reported where it is set, so silent here. */
  | { readonly kind: 'unknown-value' }
  /** `near` is found out when somebody looks at it: a long text may refer to foreign names on every line. */
  | { readonly kind: 'missing'; readonly near: () => readonly string[] }
  /** It refers back to itself; `through` names the way round. */
  | { readonly kind: 'circle'; readonly through: readonly string[] }
  /** What it is calculated from leads on too deep to be followed. */
  | { readonly kind: 'too-deep'; readonly deepest: number }
  /** It is set, but is no number. */
  | { readonly kind: 'not-a-quantity' };

/** Where the names in an expression come from. */
export interface Scope {
  constant(name: string): NameResult;
  parameter(path: string): NameResult;
}
