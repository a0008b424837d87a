import { dot, leastSquaresOfSums } from '../../physics/least-squares';
import { meanBetween } from './flight-rows';
import type { LagRows } from './lag-rows';

/** Between two rows the output goes from one to the other: half a row late. */
const between = 0.5;

/** Between these frequencies a motor's answer tells its lag: slower is the pack, faster lies between the rows. Hz. */
const band = { low: 2, high: 45 };

/** A lag that is tried. */
export interface LagGuess {
  readonly seconds: number;
  readonly skew: number;
  readonly uneven: number;
}

export interface TriedLag extends LagGuess {
  /** Sum of squares that is left. */
  readonly rest: number;
  /** How much of each feature there is. */
  readonly coefficients: readonly number[];
}

export interface LagFitting {
  readonly rate: number;
  readonly features: readonly Float64Array[];
  readonly target: Float64Array;
  /** 1 where the motor quickens. */
  readonly rises: Uint8Array;
}

/** Half of the time over which a motor is seen to quicken or to slow down, s. */
const quickening = 0.001;

export function fittingOf(rows: LagRows): LagFitting {
  const { rate, speed } = rows;
  // Looked at over some milliseconds, of which the row is the middle: speeds are logged in steps.
  const about = Math.round(quickening * rate);
  const rises = Uint8Array.from(speed, (value, row) =>
    (speed[row + about] ?? value) >= (speed[row - 1 - about] ?? value) ? 1 : 0,
  );
  return { rate, features: featuresOf(rows), target: bandPassed(speed, rate), rises };
}

function featuresOf({ output, voltage }: LagRows): readonly Float64Array[] {
  if (voltage === null) return [output, output.map((value) => value ** 2)];
  const mean = meanBetween(voltage, 0, voltage.length);
  const volts = voltage.map((value) => value / mean);
  const told = output.map((value, row) => value * (volts[row] as number));
  return [told, told.map((value) => value ** 2), volts];
}

/** By least squares, from the sums over all rows alone: hundreds of lags are tried. */
export function tryLag(fitting: LagFitting, guess: LagGuess): TriedLag {
  const { target, features } = fitting;
  const count = features.length;
  const products = new Float64Array(count * count);
  const right = new Float64Array(count);
  let squares = 0;
  eachLateRow(fitting, guess, (row, late) => {
    const wanted = target[row] as number;
    squares += wanted * wanted;
    for (let one = 0; one < count; one += 1) {
      const value = late[one] as number;
      right[one] = (right[one] as number) + value * wanted;
      for (let other = 0; other <= one; other += 1) {
        const at = one * count + other;
        products[at] = (products[at] as number) + value * (late[other] as number);
      }
    }
  });
  const fit = leastSquaresOfSums(
    features.map((_, one) =>
      features.map((_, other) => products[Math.max(one, other) * count + Math.min(one, other)] ?? 0),
    ),
    [...right],
  );
  if (fit === null) return { ...guess, rest: Number.POSITIVE_INFINITY, coefficients: [] };
  return {
    ...guess,
    rest: Math.max(0, squares - dot(fit.coefficients, [...right])),
    coefficients: fit.coefficients,
  };
}

/** Of what a fit leaves open in a row with that of the next row. */
export function correlationOf(fitting: LagFitting, fit: TriedLag): number {
  let [squares, next, before] = [0, 0, 0];
  eachLateRow(fitting, fit, (row, late) => {
    let residual = fitting.target[row] as number;
    for (let at = 0; at < fit.coefficients.length; at += 1)
      residual -= (fit.coefficients[at] as number) * (late[at] as number);
    squares += residual * residual;
    next += residual * before;
    before = residual;
  });
  return next / squares;
}

/** So long the first rows still remember what was before them, s. */
const remembered = 0.5;

/** Each row's features behind a first-order lag of what was held from row to row, so much later, within the band. */
function eachLateRow(
  { features, rate, rises, target }: LagFitting,
  { seconds, skew, uneven }: LagGuess,
  see: (row: number, late: Float64Array) => void,
): void {
  const up = 1 - Math.exp(-1 / ((1 - uneven) * seconds * rate));
  const down = 1 - Math.exp(-1 / ((1 + uneven) * seconds * rate));
  const { slow, quick } = sharesOf(rate);
  const shift = between + skew * rate;
  const whole = Math.floor(shift);
  const share = shift - whole;
  const starts = features.map((values) => values[0] ?? 0);
  const [lag, first, second, base] = [0, 1, 2, 3].map(() => Float64Array.from(starts)) as [
    Float64Array,
    Float64Array,
    Float64Array,
    Float64Array,
  ];
  const late = new Float64Array(features.length);
  const from = Math.ceil(remembered * rate);
  for (let row = 0; row < target.length; row += 1) {
    const at = Math.min(target.length - 1, Math.max(0, row - whole));
    const earlier = at === 0 ? 0 : at - 1;
    const follow = rises[row] === 1 ? up : down;
    for (let one = 0; one < features.length; one += 1) {
      const values = features[one] as Float64Array;
      const input = (1 - share) * (values[at] as number) + share * (values[earlier] as number);
      const lagged = (lag[one] as number) + follow * (input - (lag[one] as number));
      const once = (first[one] as number) + quick * (lagged - (first[one] as number));
      const twice = (second[one] as number) + quick * (once - (second[one] as number));
      const below = (base[one] as number) + slow * (twice - (base[one] as number));
      lag[one] = lagged;
      first[one] = once;
      second[one] = twice;
      base[one] = below;
      late[one] = twice - below;
    }
    if (row >= from) see(row, late);
  }
}

/** How far the filters of the band follow from row to row. */
function sharesOf(rate: number): { readonly slow: number; readonly quick: number } {
  const shareOf = (hertz: number) => 1 - Math.exp((-2 * Math.PI * hertz) / rate);
  return { slow: shareOf(band.low), quick: shareOf(band.high) };
}

/**
 * Twice a first-order low-pass, and a high-pass, forwards: the same for all, so that what is linear stays as it is to
 * each other.
 */
export function bandPassed(values: Float64Array, rate: number): Float64Array {
  const { slow, quick } = sharesOf(rate);
  let base = values[0] ?? 0;
  let [first, second] = [base, base];
  return values.map((value) => {
    first += quick * (value - first);
    second += quick * (first - second);
    base += slow * (second - base);
    return second - base;
  });
}

export function powerOf(values: Float64Array): number {
  return values.reduce((sum, value) => sum + value ** 2, 0);
}

export function deviationOf(values: Float64Array): number {
  return Math.sqrt(powerOf(values) / values.length);
}
