import type { Dimension } from '../units/dimension';

/** What a setting holds once it is understood. Quantities are in SI. */
export type Value =
  | { readonly kind: 'quantity'; readonly value: number; readonly unit: string }
  | { readonly kind: 'count'; readonly value: number }
  | { readonly kind: 'flag'; readonly value: boolean }
  | { readonly kind: 'word'; readonly value: string }
  | { readonly kind: 'words'; readonly value: readonly string[] }
  | { readonly kind: 'range'; readonly low: number; readonly high: number; readonly unit: string }
  | { readonly kind: 'curve'; readonly points: readonly CurvePoint[] }
  /** 0-based, from the top left of the overlay grid. */
  | { readonly kind: 'place'; readonly row: number; readonly column: number }
  | { readonly kind: 'text'; readonly value: string }
  | { readonly kind: 'date'; readonly value: string };

/** One point of a curve, both ends in SI. */
export interface CurvePoint {
  readonly x: number;
  readonly y: number;
}

/** What an expression comes to. */
export interface Evaluated {
  readonly value: number;
  readonly dimension: Dimension;
  /** The unit that it was written in, where it was a single quantity; else null. */
  readonly unit: string | null;
}
