import { dot } from './least-squares';

/** What is known of several quantities: where each is likely, and how far they may be off, alone and together. */
export interface Belief {
  readonly mean: readonly number[];
  readonly covariance: readonly (readonly number[])[];
}

/** Before anything was measured: each at 0 with a variance of 1, none hanging on another. */
export function untold(size: number): Belief {
  const numbers = Array.from({ length: size }, (_, index) => index);
  return {
    mean: numbers.map(() => 0),
    covariance: numbers.map((one) => numbers.map((other) => (one === other ? 1 : 0))),
  };
}

/**
 * After a reading of the sum of the quantities, each times its weight, with an error of a variance of its own: the best
 * linear estimate. In what order readings come does not matter.
 * Source: R. E. Kalman, A New Approach to Linear Filtering and Prediction Problems (1960), the update alone.
 */
export function updated(
  { mean, covariance }: Belief,
  weights: readonly number[],
  reading: number,
  variance: number,
): Belief {
  const shared = covariance.map((row) => dot(row, weights));
  const whole = dot(weights, shared) + variance;
  const surprise = reading - dot(weights, mean);
  return {
    mean: mean.map((value, index) => value + ((shared[index] ?? 0) * surprise) / whole),
    covariance: covariance.map((row, one) =>
      row.map((value, other) => value - ((shared[one] ?? 0) * (shared[other] ?? 0)) / whole),
    ),
  };
}

/** One quantity as if nothing had been told of it: another of its kind comes in its place. */
export function renewed({ mean, covariance }: Belief, which: number): Belief {
  return {
    mean: mean.map((value, index) => (index === which ? 0 : value)),
    covariance: covariance.map((row, one) =>
      row.map((value, other) => (one === which || other === which ? (one === other ? 1 : 0) : value)),
    ),
  };
}

/**
 * Independent ways in which the quantities may be off, which together have their covariances: the columns of its root.
 * Source: A.-L. Cholesky’s factors, any textbook on numerical mathematics.
 */
export function independentWays({ covariance }: Belief): readonly (readonly number[])[] {
  const root: number[][] = covariance.map((row) => row.map(() => 0));
  for (const [one, row] of covariance.entries()) {
    for (let other = 0; other <= one; other += 1) {
      const rest = (row[other] ?? 0) - dot((root[one] ?? []).slice(0, other), root[other] ?? []);
      const pivot = root[other]?.[other] ?? 0;
      const value = one === other ? Math.sqrt(Math.max(0, rest)) : pivot === 0 ? 0 : rest / pivot;
      (root[one] ?? [])[other] = value;
    }
  }
  return root.map((_, column) => root.map((row) => row[column] ?? 0));
}
