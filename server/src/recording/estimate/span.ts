import { studentNinety } from '../../physics/student';
import type { MeasuredAnswer, MeasuredSpan } from '../report';

/** A value that may lie off by so much either way, nine times of ten. */
export function give(likely: number, off: number, unit: string): MeasuredSpan {
  return { likely, low: likely - off, high: likely + off, unit };
}

export function scaled({ likely, low, high }: MeasuredSpan, by: number, unit: string): MeasuredSpan {
  const ends = [low * by, high * by];
  return { likely: likely * by, low: Math.min(...ends), high: Math.max(...ends), unit };
}

export function withheld(reason: string, advice: string): MeasuredAnswer<never> {
  return { told: null, reason, advice };
}

export function measuredBy<T>(value: T, basis: string): MeasuredAnswer<T> {
  return { told: value, basis };
}

/**
 * The mean of values of which each was had independently of the others, with what it may be off by their scatter:
 * Student's t. Null for fewer than three.
 * Source: any textbook on statistics.
 */
export function meanOf(values: readonly number[], unit: string): MeasuredSpan | null {
  if (values.length < 3) return null;
  const mean = values.reduce((sum, value) => sum + value, 0) / values.length;
  const square = values.reduce((sum, value) => sum + (value - mean) ** 2, 0) / (values.length - 1);
  return give(mean, studentNinety(values.length - 1) * Math.sqrt(square / values.length), unit);
}

/** The value below which a share of some lies; they need not be in order. NaN of none. */
export function quantile(values: readonly number[] | Float64Array, share: number): number {
  const rising = Float64Array.from(values).sort();
  const place = share * (rising.length - 1);
  const below = Math.floor(place);
  const [low = Number.NaN, high = low] = [rising[below], rising[below + 1]];
  return low + (place - below) * (high - low);
}
