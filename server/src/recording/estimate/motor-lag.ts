import { leastSquaresOfSums } from '../../physics/least-squares';
import type { MeasuredSpan, Told } from '../report';
import { type FlightRows, meanBetween } from './flight-rows';
import { told, withheld } from './span';

/** Rows of what a motor is told and how it turns, evenly spaced. */
export interface LagRows {
  readonly rate: number;
  readonly output: Float64Array;
  readonly speed: Float64Array;
  readonly voltage: Float64Array | null;
}

/** As many rows tell the time constant well enough; faster ones than this are put together. */
const mostRows = 20_000;
const fastest = 600;
const leastRate = 100;

/** From the longest time in the air without a gap. */
export function lagRows(rows: FlightRows, output: Float32Array, speed: Float32Array): LagRows | null {
  const [longest] = [...rows.airborne].sort((one, other) => other.to - other.from - (one.to - one.from));
  if (longest === undefined) return null;
  const together = Math.max(1, Math.floor(rows.rate / fastest));
  const count = Math.min(mostRows, Math.floor((longest.to - longest.from) / together));
  const voltage = rows.channel('voltage');
  const taken = (values: Float32Array) =>
    filledIn(
      Float64Array.from({ length: count }, (_, at) => {
        const from = longest.from + at * together;
        return meanBetween(values, from, from + together);
      }),
    );
  return {
    rate: rows.rate / together,
    output: taken(output),
    speed: taken(speed),
    voltage: voltage === null ? null : taken(voltage),
  };
}

/** A cell that says nothing says what the one before it did. */
function filledIn(values: Float64Array): Float64Array {
  let last = values.find((value) => !Number.isNaN(value)) ?? 0;
  return values.map((value) => {
    if (!Number.isNaN(value)) last = value;
    return last;
  });
}

/** Time constants that are tried, s, by equal factors; and how much later a column may be than the other, s. */
const tried = { from: 0.004, to: 0.25, factor: 1.18, finer: 1.015 };
const skews = [-0.001, 0, 0.001, 0.002, 0.003, 0.004] as const;

/** Between these frequencies a motor's answer tells its lag: slower is the pack, faster lies between the rows. Hz. */
const band = { low: 0.4, high: 22 };

/** What a motor does with less movement of its output is lost in noise. */
const leastMovement = 0.004;
/** The rows must be told so well (R²). Common practice. */
const leastFit = 0.6;

/**
 * The time constant from what a motor is told to how it turns: a first-order lag behind a steady speed that grows with
 * output and voltage, by a parabola; with the least squares of the speed along a grid of lags and skews of the columns.
 * Source: separable least squares, G. H. Golub, V. Pereyra (1973); the span by the likelihood of the grid, with as many
 * independent rows as the residual's own correlation leaves.
 */
export function* lagOf(rows: LagRows): Generator<void, Told<MeasuredSpan>> {
  if (rows.rate < leastRate)
    return withheld(
      'Rows come too seldom to see a motor answer.',
      'Log outputs and speeds 300 times a second or more.',
    );
  const passed = (values: ArrayLike<number>) => bandPassed(values, rows.rate);
  const output = passed(rows.output);
  if (deviationOf(output) < leastMovement)
    return withheld(
      'The motor was told nearly the same all the time.',
      'Fly with quick rolls, or short bursts of throttle.',
    );
  const target = passed(rows.speed);
  const features = featuresOf(rows).map(passed);
  const tries: Tried[] = [];
  for (let seconds = tried.from; seconds <= tried.to; seconds *= tried.factor)
    for (const skew of skews) {
      tries.push(tryLag(features, target, rows.rate, seconds, skew));
      yield;
    }
  const coarse = best(tries);
  const [low, high] = [coarse.seconds / tried.factor ** 2, coarse.seconds * tried.factor ** 2];
  const fine: Tried[] = [];
  for (let seconds = low; seconds <= high; seconds *= tried.finer)
    for (const skew of skews) {
      fine.push(tryLag(features, target, rows.rate, seconds, skew));
      yield;
    }
  const { rest, correlation, seconds } = best(fine);
  const fit = 1 - rest / powerOf(target);
  if (!(fit >= leastFit))
    return withheld(
      `Only ${Math.max(0, Math.round(100 * fit))} % of the speed's movement follows from what the motor is told.`,
      'Confirm which speed belongs to which motor, and log both in every row.',
    );
  if (seconds > tried.to / tried.factor || seconds < tried.from * tried.factor)
    return withheld(
      'The speed follows too fast or too slowly to be a motor’s.',
      'Confirm the columns of outputs and speeds.',
    );
  return told(
    spanOf(fine, rows.output.length, correlation, rest),
    `${(rows.output.length / rows.rate).toFixed(0)} s, with ${Math.round(100 * fit)} % of the speed’s movement told`,
  );
}

interface Tried {
  readonly seconds: number;
  /** Sum of squares that is left. */
  readonly rest: number;
  /** Of a residual with the next. */
  readonly correlation: number;
}

function best(tries: readonly Tried[]): Tried {
  return tries.reduce((least, one) => (one.rest < least.rest ? one : least));
}

function featuresOf({ output, voltage }: LagRows): readonly Float64Array[] {
  const mean = voltage === null ? 1 : meanBetween(voltage, 0, voltage.length);
  const volts = output.map((value, at) => (value * (voltage?.[at] ?? 1)) / mean);
  const square = volts.map((value) => value ** 2);
  return voltage === null ? [volts, square] : [volts, square, voltage.map((value) => value / mean)];
}

function tryLag(
  features: readonly Float64Array[],
  target: Float64Array,
  rate: number,
  seconds: number,
  skew: number,
): Tried {
  const late = features.map((values) => lagged(values, rate, seconds, skew));
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
  if (fit === null) return { seconds, rest: Number.POSITIVE_INFINITY, correlation: 0 };
  let [rest, next, before] = [0, 0, 0];
  for (let row = from; row < target.length; row += 1) {
    let residual = target[row] as number;
    for (let at = 0; at < late.length; at += 1)
      residual -= (fit.coefficients[at] as number) * ((late[at] as Float64Array)[row] as number);
    rest += residual ** 2;
    next += residual * before;
    before = residual;
  }
  return { seconds, rest, correlation: next / rest };
}

/** A first-order lag of what was held from row to row, so much later. */
function lagged(values: Float64Array, rate: number, seconds: number, skew: number): Float64Array {
  const keep = Math.exp(-1 / (seconds * rate));
  const shift = skew * rate;
  const whole = Math.floor(shift);
  const share = shift - whole;
  const out = new Float64Array(values.length);
  let state = values[0] ?? 0;
  for (let row = 0; row < values.length; row += 1) {
    const at = Math.min(values.length - 1, Math.max(0, row - whole));
    const earlier = values[Math.max(0, at - 1)] as number;
    const input = (1 - share) * (values[at] as number) + share * earlier;
    state = keep * state + (1 - keep) * input;
    out[row] = state;
  }
  return out;
}

/** The same first-order low and high pass for all, forwards: what is linear stays as it is to each other. */
function bandPassed(values: ArrayLike<number>, rate: number): Float64Array {
  const [quick, slow] = [band.high, band.low].map((hertz) => 1 - Math.exp((-2 * Math.PI * hertz) / rate));
  const out = new Float64Array(values.length);
  let [first, second, base] = [values[0] ?? 0, values[0] ?? 0, values[0] ?? 0];
  for (let row = 0; row < values.length; row += 1) {
    first += (quick as number) * ((values[row] as number) - first);
    second += (quick as number) * (first - second);
    base += (slow as number) * (second - base);
    out[row] = second - base;
  }
  return out;
}

function powerOf(values: Float64Array): number {
  return values.reduce((sum, value) => sum + value ** 2, 0);
}

function deviationOf(values: Float64Array): number {
  return Math.sqrt(powerOf(values) / values.length);
}

/** What a motor that quickens and slows differently, and a parabola, leave open: a share. */
const modelError = 0.05;

/** ms */
function spanOf(tries: readonly Tried[], count: number, correlation: number, rest: number): MeasuredSpan {
  const independent = Math.max(4, (count * (1 - correlation)) / (1 + correlation));
  const weights = tries.map((one) => Math.exp((-independent / 2) * Math.log(one.rest / rest)));
  const all = weights.reduce((sum, weight) => sum + weight, 0);
  const mean = tries.reduce((sum, { seconds }, at) => sum + seconds * (weights[at] ?? 0), 0) / all;
  const square =
    tries.reduce((sum, { seconds }, at) => sum + (weights[at] ?? 0) * (seconds - mean) ** 2, 0) / all;
  const off = Math.hypot(1.645 * Math.sqrt(square), modelError * mean);
  return { likely: 1000 * mean, low: 1000 * (mean - off), high: 1000 * (mean + off), unit: 'ms' };
}
