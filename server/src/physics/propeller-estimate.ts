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

/** The row of four blades in the table below. */
const byFour: readonly [thrust: number, power: number] = [1.49, 1.56];

/**
 * What the number of blades does to the coefficients of two, as a ratio: of thrust and of power.
 * Source: University of Illinois Propeller Data Site, volume 2, one shape of 5 by 3.75 inches with two, three
 * and four blades.
 */
const byBlades: ReadonlyMap<number, readonly [thrust: number, power: number]> = new Map([
  [2, [1, 1]],
  [3, [1.27, 1.29]],
  [4, byFour],
]);

/** Powers of blades over two by which four blades differ from two: carried on to one blade, and to five and more. */
const powers = [Math.log(byFour[0]) / Math.log(2), Math.log(byFour[1]) / Math.log(2)] as const;

function bladeRatio(blades: number): readonly [thrust: number, power: number] {
  const [thrust, power] = powers;
  return byBlades.get(blades) ?? [(blades / 2) ** thrust, (blades / 2) ** power];
}

/** Share by which a coefficient may be off for each doubling of the blades beyond those that were measured. An assumption. */
const spreadPerDoubling = 0.15;

/** Outside of two to four blades nothing was measured: the estimate gets wider with every step away. */
function bladeSpread(blades: number): number {
  const nearest = Math.min(4, Math.max(2, blades));
  return spreadPerDoubling * Math.abs(Math.log2(blades / nearest));
}

/**
 * Coefficients of a propeller from measured ones: each is brought to two blades and counts the more, the nearer
 * its pitch over diameter is (a bell curve). The spread is that of the measured ones about the mean.
 * Domain: pitch and diameter above 0, at least one blade, a list that is not empty.
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
  const asked = measured.map((one) => one.powerCoefficient / bladeRatio(one.blades)[1]);
  const doubt = bladeSpread(blades);
  return {
    thrust: weighted(thrusts, weights, moreThrust, doubt),
    power: weighted(asked, weights, morePower, doubt),
  };
}

function weighted(
  values: readonly number[],
  weights: readonly number[],
  ratio: number,
  doubt: number,
): EstimatedCoefficient {
  const sum = weights.reduce((total, weight) => total + weight, 0);
  const over = (of: (value: number) => number) =>
    values.reduce((total, value, index) => total + (weights[index] ?? 0) * of(value), 0) / sum;
  const mean = over((value) => value);
  const variance = over((value) => (value - mean) ** 2);
  return { likely: mean * ratio, spread: Math.hypot(Math.sqrt(variance) / mean, doubt) };
}
