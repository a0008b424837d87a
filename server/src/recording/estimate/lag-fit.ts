import { leastSquaresOfSums } from '../../physics/least-squares';
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
  /** Of a residual with the next. */
  readonly correlation: number;
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

export function tryLag({ features, target, rate, rises }: LagFitting, guess: LagGuess): TriedLag {
  const late = features.map((values) => bandPassed(lagged(values, rises, rate, guess), rate));
  // The first rows still remember what was before them.
  const from = Math.ceil(0.5 * rate);
  const sum = (one: Float64Array, other: Float64Array) => {
    let all = 0;
    for (let row = from; row < target.length; row += 1) all += (one[row] as number) * (other[row] as number);
    return all;
  };
  const fit = leastSquaresOfSums(
    late.map((one) => late.map((other) => sum(one, other))),
    late.map((one) => sum(one, target)),
  );
  if (fit === null) return { ...guess, rest: Number.POSITIVE_INFINITY, correlation: 0 };
  let [rest, next, before] = [0, 0, 0];
  for (let row = from; row < target.length; row += 1) {
    let residual = target[row] as number;
    for (let at = 0; at < late.length; at += 1)
      residual -= (fit.coefficients[at] as number) * ((late[at] as Float64Array)[row] as number);
    rest += residual ** 2;
    next += residual * before;
    before = residual;
  }
  return { ...guess, rest, correlation: next / rest };
}

/** A first-order lag of what was held from row to row, so much later. */
function lagged(
  values: Float64Array,
  rises: Uint8Array,
  rate: number,
  { seconds, skew, uneven }: LagGuess,
): Float64Array {
  const [up, down] = [
    Math.exp(-1 / ((1 - uneven) * seconds * rate)),
    Math.exp(-1 / ((1 + uneven) * seconds * rate)),
  ];
  const shift = between + skew * rate;
  const whole = Math.floor(shift);
  const share = shift - whole;
  const out = new Float64Array(values.length);
  let state = values[0] ?? 0;
  for (let row = 0; row < values.length; row += 1) {
    const at = Math.min(values.length - 1, Math.max(0, row - whole));
    const earlier = values[Math.max(0, at - 1)] as number;
    const input = (1 - share) * (values[at] as number) + share * earlier;
    const keep = rises[row] === 1 ? up : down;
    state = keep * state + (1 - keep) * input;
    out[row] = state;
  }
  return out;
}

/** The same low and high pass for all, forwards: what is linear stays as it is to each other. */
export function bandPassed(values: Float64Array, rate: number): Float64Array {
  const slow = 1 - Math.exp((-2 * Math.PI * band.low) / rate);
  let base = values[0] ?? 0;
  return lowPassed(values, rate, band.high).map((value) => {
    base += slow * (value - base);
    return value - base;
  });
}

/** Twice a first-order low-pass. */
function lowPassed(values: Float64Array, rate: number, hertz: number): Float64Array {
  const quick = 1 - Math.exp((-2 * Math.PI * hertz) / rate);
  let [first, second] = [values[0] ?? 0, values[0] ?? 0];
  return values.map((value) => {
    first += quick * (value - first);
    second += quick * (first - second);
    return second;
  });
}

export function powerOf(values: Float64Array): number {
  return values.reduce((sum, value) => sum + value ** 2, 0);
}

export function deviationOf(values: Float64Array): number {
  return Math.sqrt(powerOf(values) / values.length);
}
