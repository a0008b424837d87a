/**
 * All values from one end to the other, both included; in SI, or whole numbers of a count. Nothing lies in it where
 * `low` is above `high`.
 */
export interface Interval {
  readonly low: number;
  readonly high: number;
}

export const anything: Interval = { low: Number.NEGATIVE_INFINITY, high: Number.POSITIVE_INFINITY };

export function single(value: number): Interval {
  return { low: value, high: value };
}

export function isEmpty({ low, high }: Interval): boolean {
  return low > high;
}

/** Whether a value lies in it, give or take the dust that binary arithmetic leaves behind. */
export function liesWithin({ low, high }: Interval, value: number): boolean {
  const dust = 1e-9 * Math.abs(value);
  return value >= low - dust && value <= high + dust;
}

/** What lies in both. */
export function common(one: Interval, other: Interval): Interval {
  return { low: Math.max(one.low, other.low), high: Math.min(one.high, other.high) };
}

export function negative({ low, high }: Interval): Interval {
  return { low: -high, high: -low };
}

export function sum(one: Interval, other: Interval): Interval {
  return { low: one.low + other.low, high: one.high + other.high };
}

export function product(one: Interval, other: Interval): Interval {
  const corners = [one.low, one.high].flatMap((x) => [other.low, other.high].map((y) => x * y));
  // Nothing times without end: any value may come of it.
  if (corners.some(Number.isNaN)) return anything;
  return { low: Math.min(...corners), high: Math.max(...corners) };
}

/** Of something that may be nothing, any value may come. */
export function inverse({ low, high }: Interval): Interval {
  return low > 0 || high < 0 ? { low: 1 / high, high: 1 / low } : anything;
}
