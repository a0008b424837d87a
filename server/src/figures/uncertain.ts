/** One input of a model that is known only so far: how the model looks with it low and with it high. */
export interface Doubt<T> {
  readonly low: (model: T) => T;
  readonly high: (model: T) => T;
}

/** A model as it is likely, and as it looks with each of its doubts turned by itself. */
export interface Doubtful<T> {
  readonly likely: T;
  readonly turned: readonly (readonly [low: T, high: T])[];
}

export function doubtful<T>(likely: T, doubts: readonly Doubt<T>[]): Doubtful<T> {
  return { likely, turned: doubts.map(({ low, high }) => [low(likely), high(likely)]) };
}

/** The same change made to a model and to what its doubts make of it. */
export function changedIn<T>({ likely, turned }: Doubtful<T>, change: (model: T) => T): Doubtful<T> {
  return { likely: change(likely), turned: turned.map(([low, high]) => [change(low), change(high)]) };
}

export interface Estimate {
  readonly likely: number;
  readonly low: number;
  readonly high: number;
}

/** An input that is multiplied: `share` of it on either side. */
export function doubtOf<T>(share: number, scaled: (model: T, by: number) => T): Doubt<T> {
  return { low: (model) => scaled(model, 1 - share), high: (model) => scaled(model, 1 + share) };
}

/**
 * A measure of a model with what its doubts make of it. Null where the measure is; a doubt without a measure counts
 * not.
 */
export function estimate<T>(
  { likely: model, turned }: Doubtful<T>,
  measure: (model: T) => number | null,
): Estimate | null {
  const likely = measure(model);
  if (likely === null || !Number.isFinite(likely)) return null;
  return estimateAbout(likely, turned, (one) => measure(one) ?? likely);
}

/**
 * About a measure that is known, by the measures of the model with each doubt turned: the deviations are added as
 * independent ones are, by their squares.
 * Source: JCGM 100, Guide to the expression of uncertainty in measurement, section 5.1 (by finite differences).
 */
export function estimateAbout<T>(
  likely: number,
  turned: Doubtful<T>['turned'],
  measure: (model: T) => number,
): Estimate {
  let [below, above] = [0, 0];
  for (const pair of turned) {
    const moved = pair.map((one) => measure(one) - likely);
    below += Math.min(0, ...moved) ** 2;
    above += Math.max(0, ...moved) ** 2;
  }
  return { likely, low: likely - Math.sqrt(below), high: likely + Math.sqrt(above) };
}
