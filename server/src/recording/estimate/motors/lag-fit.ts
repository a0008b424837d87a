import { dot, leastSquaresOfSums } from '../../../physics/least-squares';
import { meanBetween } from '../flight-rows';
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
  /** Where the features of a lag that is tried are put, again and again. */
  readonly late: readonly Float64Array[];
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
  const features = featuresOf(rows);
  const late = features.map(({ length }) => new Float64Array(length));
  return { rate, features, target: bandPassed(speed, rate), rises, late };
}

function featuresOf({ output, voltage }: LagRows): readonly Float64Array[] {
  if (voltage === null) return [output, output.map((value) => value ** 2)];
  const mean = meanBetween(voltage, 0, voltage.length);
  const volts = voltage.map((value) => value / mean);
  const told = output.map((value, row) => value * (volts[row] as number));
  return [told, told.map((value) => value ** 2), volts];
}

/** By least squares. */
export function tryLag(fitting: LagFitting, guess: LagGuess): TriedLag {
  const { target, late, rate } = fitting;
  makeLate(fitting, guess);
  const from = firstRow(rate);
  const right = late.map((one) => sumOf(one, target, from));
  const fit = leastSquaresOfSums(
    late.map((one) => late.map((other) => sumOf(one, other, from))),
    right,
  );
  if (fit === null) return { ...guess, rest: Number.POSITIVE_INFINITY, coefficients: [] };
  const rest = sumOf(target, target, from) - dot(fit.coefficients, right);
  return { ...guess, rest: Math.max(0, rest), coefficients: fit.coefficients };
}

function sumOf(one: Float64Array, other: Float64Array, from: number): number {
  let sum = 0;
  for (let row = from; row < one.length; row += 1) sum += (one[row] as number) * (other[row] as number);
  return sum;
}

/** Of what a fit leaves open in a row with that of the next row. */
export function correlationOf(fitting: LagFitting, fit: TriedLag): number {
  const { target, late, rate } = fitting;
  makeLate(fitting, fit);
  let [squares, next, before] = [0, 0, 0];
  for (let row = firstRow(rate); row < target.length; row += 1) {
    let residual = target[row] as number;
    for (let at = 0; at < late.length; at += 1)
      residual -= (fit.coefficients[at] ?? 0) * ((late[at] as Float64Array)[row] as number);
    squares += residual * residual;
    next += residual * before;
    before = residual;
  }
  return next / squares;
}

/** So long the first rows still remember what was before them, s. */
const remembered = 0.5;

function firstRow(rate: number): number {
  return Math.ceil(remembered * rate);
}

/**
 * Puts each feature behind a first-order lag of what was held from row to row, so much later, within the band. In one
 * loop and always into the same memory: hundreds of lags are tried.
 */
function makeLate(fitting: LagFitting, { seconds, skew, uneven }: LagGuess): void {
  const { rate, rises } = fitting;
  const up = 1 - Math.exp(-1 / ((1 - uneven) * seconds * rate));
  const down = 1 - Math.exp(-1 / ((1 + uneven) * seconds * rate));
  const { slow, quick } = sharesOf(rate);
  const shift = between + skew * rate;
  const whole = Math.floor(shift);
  const share = shift - whole;
  for (const [nth, values] of fitting.features.entries()) {
    const late = fitting.late[nth] as Float64Array;
    const last = values.length - 1;
    let lag = values[0] ?? 0;
    let [first, second, base] = [lag, lag, lag];
    for (let row = 0; row <= last; row += 1) {
      const at = Math.min(last, Math.max(0, row - whole));
      const earlier = values[at === 0 ? 0 : at - 1] as number;
      const input = (values[at] as number) * (1 - share) + earlier * share;
      lag += (rises[row] === 1 ? up : down) * (input - lag);
      first += quick * (lag - first);
      second += quick * (first - second);
      base += slow * (second - base);
      late[row] = second - base;
    }
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
