/** A propeller that somebody measured standing still. Lengths in m. */
export interface Measured {
  readonly diameter: number;
  readonly pitch: number;
  readonly blades: number;
  readonly thrustCoefficient: number;
  readonly powerCoefficient: number;
}

/** A coefficient as it is likely, and how far those of like propellers lie from it, as a share. */
export interface EstimatedCoefficient {
  readonly likely: number;
  readonly spread: number;
}

export interface EstimatedPropeller {
  readonly thrust: EstimatedCoefficient;
  readonly power: EstimatedCoefficient;
}

/** How much alike two propellers must be pitched to count for one another: a width in pitch over diameter. */
const likeness = 0.12;

/**
 * What more blades do to the coefficients of two, as a ratio: of thrust and of power.
 * Source: University of Illinois Propeller Data Site, volume 2, one shape of 5 by 3.75 inches with two, three
 * and four blades; beyond four the steps are carried on.
 */
const byBlades: readonly (readonly [thrust: number, power: number])[] = [
  [1, 1],
  [1.27, 1.29],
  [1.49, 1.56],
  [1.69, 1.81],
  [1.87, 2.05],
];

function bladeRatio(blades: number): readonly [thrust: number, power: number] {
  const [last = [1, 1] as const] = byBlades.slice(-1);
  return byBlades[Math.max(0, Math.round(blades) - 2)] ?? last;
}

/**
 * Coefficients of a propeller from measured ones: each is brought to two blades and counts the more, the nearer
 * its pitch over diameter is (a bell curve). The spread is that of the measured ones about the mean.
 * Domain: pitch and diameter above 0, at least two blades, a list that is not empty.
 */
export function estimatePropeller(
  measured: readonly Measured[],
  { diameter, pitch, blades }: Pick<Measured, 'diameter' | 'pitch' | 'blades'>,
): EstimatedPropeller {
  const weights = measured.map((one) => {
    const apart = (one.pitch / one.diameter - pitch / diameter) / likeness;
    return Math.exp(-(apart * apart) / 2) + Number.EPSILON;
  });
  const [moreThrust, morePower] = bladeRatio(blades);
  const thrusts = measured.map((one) => one.thrustCoefficient / bladeRatio(one.blades)[0]);
  const powers = measured.map((one) => one.powerCoefficient / bladeRatio(one.blades)[1]);
  return {
    thrust: weighted(thrusts, weights, moreThrust),
    power: weighted(powers, weights, morePower),
  };
}

function weighted(
  values: readonly number[],
  weights: readonly number[],
  ratio: number,
): EstimatedCoefficient {
  const sum = weights.reduce((total, weight) => total + weight, 0);
  const over = (of: (value: number) => number) =>
    values.reduce((total, value, index) => total + (weights[index] ?? 0) * of(value), 0) / sum;
  const mean = over((value) => value);
  const variance = over((value) => (value - mean) ** 2);
  return { likely: mean * ratio, spread: Math.sqrt(variance) / mean };
}
