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
  /** Sum of the target's squares over the rows that are fitted. */
  readonly moved: number;
  /** 1 where the motor quickens; numbers, since a question at each row takes longer than a product. */
  readonly rises: Float64Array;
  /** Where the features of a lag that is tried are put, again and again. */
  readonly late: readonly Float64Array[];
}

/** Half of the time over which a motor is seen to quicken or to slow down, s. */
const quickening = 0.001;

export function fittingOf(rows: LagRows): LagFitting {
  const { rate, speed } = rows;
  // Looked at over some milliseconds, of which the row is the middle: speeds are logged in steps.
  const about = Math.round(quickening * rate);
  const rises = Float64Array.from(speed, (value, row) =>
    (speed[row + about] ?? value) >= (speed[row - 1 - about] ?? value) ? 1 : 0,
  );
  const features = featuresOf(rows);
  const late = features.map(({ length }) => new Float64Array(length));
  const target = bandPassed(speed, rate);
  return { rate, features, target, moved: sumOf(target, target, firstRow(rate)), rises, late };
}

function featuresOf({ output, voltage }: LagRows): readonly Float64Array[] {
  if (voltage === null) return [output, output.map((value) => value ** 2)];
  const mean = meanBetween(voltage, 0, voltage.length);
  const volts = voltage.map((value) => value / mean);
  const told = output.map((value, row) => value * (volts[row] as number));
  return [told, told.map((value) => value ** 2), volts];
}

/** The features so much later, s: half a row more, and between two rows on the line from one to the other. */
export function delayedBy({ features, rate }: LagFitting, skew: number): readonly Float64Array[] {
  const shift = between + skew * rate;
  const whole = Math.floor(shift);
  const share = shift - whole;
  return features.map((values) => {
    const last = values.length - 1;
    return values.map((_, row) => {
      const at = Math.min(last, Math.max(0, row - whole));
      return (values[at] as number) * (1 - share) + (values[at === 0 ? 0 : at - 1] as number) * share;
    });
  });
}

/** By least squares. `delayed`: the features by the skew of the guess. */
export function tryLag(
  fitting: LagFitting,
  guess: LagGuess,
  delayed: readonly Float64Array[] = delayedBy(fitting, guess.skew),
): TriedLag {
  const { target, moved, late, rate } = fitting;
  makeLate(fitting, guess, delayed);
  const from = firstRow(rate);
  const right = late.map((one) => sumOf(one, target, from));
  const below = late.map((one, at) => late.slice(0, at + 1).map((other) => sumOf(one, other, from)));
  const normal = late.map((_, row) =>
    late.map((_, column) => below[Math.max(row, column)]?.[Math.min(row, column)] ?? 0),
  );
  const fit = leastSquaresOfSums(normal, right);
  if (fit === null) return { ...guess, rest: Number.POSITIVE_INFINITY, coefficients: [] };
  return {
    ...guess,
    rest: Math.max(0, moved - dot(fit.coefficients, right)),
    coefficients: fit.coefficients,
  };
}

/** In four sums side by side: a processor begins the next product before the last has been added. */
function sumOf(one: Float64Array, other: Float64Array, from: number): number {
  const end = one.length - 3;
  let [first, second, third, fourth] = [0, 0, 0, 0];
  let row = from;
  for (; row < end; row += 4) {
    first += (one[row] as number) * (other[row] as number);
    second += (one[row + 1] as number) * (other[row + 1] as number);
    third += (one[row + 2] as number) * (other[row + 2] as number);
    fourth += (one[row + 3] as number) * (other[row + 3] as number);
  }
  for (; row < one.length; row += 1) first += (one[row] as number) * (other[row] as number);
  return first + second + (third + fourth);
}

/** Of what a fit leaves open in a row with that of the next row. */
export function correlationOf(fitting: LagFitting, fit: TriedLag): number {
  const { target, late, rate } = fitting;
  makeLate(fitting, fit, delayedBy(fitting, fit.skew));
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
 * Puts each feature behind a first-order lag of what was held from row to row, within the band. In one loop and always
 * into the same memory: hundreds of lags are tried.
 */
function makeLate(
  { rate, rises, late: memory }: LagFitting,
  { seconds, uneven }: LagGuess,
  delayed: readonly Float64Array[],
): void {
  const up = 1 - Math.exp(-1 / ((1 - uneven) * seconds * rate));
  const down = 1 - Math.exp(-1 / ((1 + uneven) * seconds * rate));
  const more = up - down;
  const { slow, quick } = sharesOf(rate);
  for (const [nth, values] of delayed.entries()) {
    const late = memory[nth] as Float64Array;
    let lag = values[0] ?? 0;
    let [first, second, base] = [lag, lag, lag];
    for (let row = 0; row < values.length; row += 1) {
      lag += (down + more * (rises[row] as number)) * ((values[row] as number) - lag);
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
