import { dot, leastSquares, leverage } from './least-squares';
import { studentNinety } from './student';

/** A propeller that somebody measured standing still. Lengths in m. */
export interface Measured {
  /** Propellers of one make are alike in more than their sizes. */
  readonly make: number;
  readonly diameter: number;
  readonly pitch: number;
  readonly blades: number;
  readonly thrustCoefficient: number;
  readonly powerCoefficient: number;
}

/** A coefficient as it is likely, and the factor that holds nine of ten like propellers, down and up. */
export interface EstimatedCoefficient {
  readonly likely: number;
  readonly factor: number;
}

export interface EstimatedPropeller {
  readonly thrust: EstimatedCoefficient;
  readonly power: EstimatedCoefficient;
  /** How far the two go together: blades that lift more drag more. From -1 to 1. */
  readonly correlation: number;
}

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

/** By how much the logarithm may be off for each doubling of the blades beyond those that were measured. An assumption. */
const spreadPerDoubling = 0.15;

/** Outside of two to four blades nothing was measured: the estimate gets wider with every step away. */
function bladeSpread(blades: number): number {
  const nearest = Math.min(4, Math.max(2, blades));
  return spreadPerDoubling * Math.abs(Math.log2(blades / nearest));
}

/**
 * Share of the variance that propellers of one make have in common: a second one of a make tells less than one of
 * another. Chosen so that nine of ten lie inside when a whole make is left out.
 */
const alikeInMake = 0.3;

/** What measured propellers have in common: for each coefficient a plane, as below. */
export interface PropellerLaw {
  readonly thrust: Plane;
  readonly power: Plane;
  readonly correlation: number;
}

type Plane = NonNullable<ReturnType<typeof planeThrough>>;

/**
 * The logarithm of each coefficient, brought to two blades, lies on a plane over those of pitch over diameter and of
 * diameter. Null where the measured ones do not lie apart enough. Domain: lengths and coefficients above 0.
 * Source of the method: weighted least squares, N. R. Draper, H. Smith, Applied Regression Analysis.
 */
export function propellerLaw(measured: readonly Measured[]): PropellerLaw | null {
  const thrust = planeThrough(measured, (one) => one.thrustCoefficient / bladeRatio(one.blades)[0]);
  const power = planeThrough(measured, (one) => one.powerCoefficient / bladeRatio(one.blades)[1]);
  if (thrust === null || power === null) return null;
  const size = Math.sqrt(dot(thrust.residuals, thrust.residuals) * dot(power.residuals, power.residuals));
  return { thrust, power, correlation: dot(thrust.residuals, power.residuals) / size };
}

/**
 * Coefficients of a propeller by what measured ones have in common. The span is where the next propeller of another
 * make lies nine times of ten: a prediction interval, which widens with the distance from what was measured.
 * Domain: pitch and diameter above 0, at least one blade.
 */
export function estimatePropeller(
  { thrust, power, correlation }: PropellerLaw,
  asked: Pick<Measured, 'diameter' | 'pitch' | 'blades'>,
): EstimatedPropeller {
  const [moreThrust, morePower] = bladeRatio(asked.blades);
  return {
    thrust: predicted(thrust, asked, moreThrust),
    power: predicted(power, asked, morePower),
    correlation,
  };
}

function rowOf({ diameter, pitch }: Pick<Measured, 'diameter' | 'pitch'>): readonly number[] {
  return [1, Math.log(pitch / diameter), Math.log(diameter)];
}

function planeThrough(measured: readonly Measured[], coefficient: (one: Measured) => number) {
  const weights = measured.map(({ make }) => {
    const ofMake = measured.filter((other) => other.make === make).length;
    return 1 / (1 - alikeInMake + alikeInMake * ofMake);
  });
  const roots = weights.map(Math.sqrt);
  const weighted = (root: number, index: number) => root * (roots[index] ?? 0);
  const fit = leastSquares(
    measured.map((one, index) => rowOf(one).map((value) => weighted(value, index))),
    measured.map((one, index) => weighted(Math.log(coefficient(one)), index)),
  );
  const freedom = weights.reduce((sum, weight) => sum + weight, 0) - 3;
  return fit === null || freedom <= 0 ? null : { ...fit, freedom };
}

function predicted(
  { coefficients, residuals, inverse, freedom }: Plane,
  asked: Pick<Measured, 'diameter' | 'pitch' | 'blades'>,
  ratio: number,
): EstimatedCoefficient {
  const row = rowOf(asked);
  const deviation = Math.sqrt((dot(residuals, residuals) / freedom) * (1 + leverage(inverse, row)));
  const spread = Math.hypot(studentNinety(freedom) * deviation, bladeSpread(asked.blades));
  return { likely: ratio * Math.exp(dot(row, coefficients)), factor: Math.exp(spread) };
}
