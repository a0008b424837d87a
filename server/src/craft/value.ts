import { type Dimension, plain } from '../units/dimension';
import { isOnScale, type Unit, unitOf } from '../units/unit';

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
  | { readonly kind: 'date'; readonly value: string }
  /** What only the board understands, exactly as it writes it. */
  | { readonly kind: 'bare'; readonly value: string };

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
  readonly kind: NumberKind;
}

/**
 * What may be done with a number. `bare`: it has no unit anywhere (`1 / 20`), so that it measures nothing.
 * `on-scale`: a temperature, which counts from a zero of its scale: it can be shifted, and nothing else.
 * `level`: in decibels above something, a logarithm: it stands for itself, and no calculation takes it.
 */
export type NumberKind = 'bare' | 'quantity' | 'on-scale' | 'level';

/** What may be done with a number in a unit. */
export function numberKind(unit: Unit): NumberKind {
  if (unit.decibelsAbove !== null) return 'level';
  return isOnScale(unit) ? 'on-scale' : 'quantity';
}

/** The quantity that a parameter holds, for an expression that names it. */
export function quantityNamed(
  { value, unit }: Extract<Value, { kind: 'quantity' }>,
  { dimension, isScale }: { readonly dimension: Dimension; readonly isScale?: boolean },
): Evaluated {
  const kind = isScale === true ? 'on-scale' : 'quantity';
  return { value, dimension, unit, kind: unitOf(unit).decibelsAbove === null ? kind : 'level' };
}

/** A whole number that a parameter holds: it stands for something, so that it is not bare. */
export function countNamed(value: number): Evaluated {
  return { value, dimension: plain, unit: null, kind: 'quantity' };
}
