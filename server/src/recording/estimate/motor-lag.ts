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
const mostRows = 12_000;
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

/** Time constants that are tried first, s, by equal factors. */
const tried = { from: 0.004, to: 0.25, factor: 1.2 };
/** How much later one column may be than the other, s. */
const skews = [-0.002, -0.001, 0, 0.001, 0.002, 0.003, 0.004] as const;
/** By which share of their mean a motor slows down later, and quickens sooner: brakes are weaker than drive. */
const unevens = [-0.12, -0.06, 0, 0.06, 0.12, 0.18, 0.24, 0.3] as const;
/** Between two rows the output goes from one to the other: half a row late. */
const between = 0.5;

/** Between these frequencies a motor's answer tells its lag: slower is the pack, faster lies between the rows. Hz. */
const band = { low: 2, high: 45 };

/** What a motor does with less movement of its output is lost in noise. */
const leastMovement = 0.004;
/** The rows must be told so well (R²). Common practice. */
const leastFit = 0.6;

/**
 * The time constant from what a motor is told to how it turns: a first-order lag, another up than down, behind a steady
 * speed that grows with output and voltage by a parabola; with the least squares of the speed along a grid of lags, of
 * skews of the columns and of how uneven it is. Told is the mean of how quickly it answers either way.
 * Source: separable least squares, G. H. Golub, V. Pereyra (1973); the span by the likelihood of the grid, with as many
 * independent rows as the residual's own correlation leaves.
 */
export function* lagOf(rows: LagRows): Generator<void, Told<MeasuredSpan>> {
  if (rows.rate < leastRate)
    return withheld(
      'Rows come too seldom to see a motor answer.',
      'Log outputs and speeds 300 times a second or more.',
    );
  if (deviationOf(bandPassed(rows.output, rows.rate)) < leastMovement)
    return withheld(
      'The motor was told nearly the same all the time.',
      'Fly with quick rolls, or short bursts of throttle.',
    );
  const fitting = fittingOf(rows);
  const start: Guess = { seconds: 0.03, skew: 0, uneven: 0 };
  const about = ({ seconds }: Guess, share: number, factor: number) =>
    factors(seconds / share, seconds * share, factor);
  // A longer lag and an uneven one look alike until both are tried together.
  const all = factors(tried.from, tried.to, tried.factor);
  const coarse = best(yield* triesOf(fitting, start, { all, skews }));
  const uneven = best(yield* triesOf(fitting, coarse, { all: about(coarse, 1.4, 1.08), unevens }));
  const skewed = best(yield* triesOf(fitting, uneven, { all: about(uneven, 1.2, 1.05), skews }));
  const close = unevens.map((one) => skewed.uneven + one / 4);
  const fine = yield* triesOf(fitting, skewed, { all: about(skewed, 1.12, 1.02), unevens: close });
  const { rest, correlation, seconds } = best(fine);
  const fit = 1 - rest / powerOf(fitting.target);
  if (!(fit >= leastFit))
    return withheld(
      `Only ${Math.max(0, Math.round(100 * fit))} % of the speed’s movement follows from what the motor is told.`,
      'Confirm which speed belongs to which motor, and log both in every row.',
    );
  if (seconds > tried.to / tried.factor || seconds < tried.from * tried.factor)
    return withheld(
      'The speed follows too fast or too slowly to be a motor’s.',
      'Confirm the columns of outputs and speeds.',
    );
  const span = spanOf(fine, rows.output.length, correlation, rest);
  return told(span, basisOf(rows, fit, best(fine)));
}

function basisOf({ output, rate }: LagRows, fit: number, { seconds, uneven }: Guess): string {
  const [up, down] = [1 - uneven, 1 + uneven].map((share) => (1000 * share * seconds).toFixed(0));
  const ways = up === down ? '' : `; up in ${up} ms, down in ${down} ms`;
  return `${(output.length / rate).toFixed(0)} s, with ${Math.round(100 * fit)} % of the speed’s movement told${ways}`;
}

interface Guess {
  readonly seconds: number;
  readonly skew: number;
  readonly uneven: number;
}

interface Tried extends Guess {
  /** Sum of squares that is left. */
  readonly rest: number;
  /** Of a residual with the next. */
  readonly correlation: number;
}

interface Fitting {
  readonly rate: number;
  readonly features: readonly Float64Array[];
  readonly target: Float64Array;
  /** 1 where the motor quickens. */
  readonly rises: Uint8Array;
}

/** Half of the time over which a motor is seen to quicken or to slow down, s. */
const quickening = 0.002;

function fittingOf(rows: LagRows): Fitting {
  const { rate, speed } = rows;
  // Looked at over some milliseconds, of which the row is the middle: speeds are logged in steps.
  const about = Math.round(quickening * rate);
  const rises = Uint8Array.from(speed, (value, row) =>
    (speed[row + about] ?? value) >= (speed[row - 1 - about] ?? value) ? 1 : 0,
  );
  return { rate, features: featuresOf(rows), target: bandPassed(speed, rate), rises };
}

function* triesOf(
  fitting: Fitting,
  about: Guess,
  over: {
    readonly all?: readonly number[];
    readonly skews?: readonly number[];
    readonly unevens?: readonly number[];
  },
): Generator<void, readonly Tried[]> {
  const tries: Tried[] = [];
  for (const seconds of over.all ?? [about.seconds])
    for (const skew of over.skews ?? [about.skew])
      for (const uneven of over.unevens ?? [about.uneven]) {
        tries.push(tryLag(fitting, { seconds, skew, uneven }));
        yield;
      }
  return tries;
}

function factors(from: number, to: number, factor: number): readonly number[] {
  return Array.from(
    { length: Math.ceil(Math.log(to / from) / Math.log(factor)) + 1 },
    (_, at) => from * factor ** at,
  );
}

function best(tries: readonly Tried[]): Tried {
  return tries.reduce((least, one) => (one.rest < least.rest ? one : least));
}

function featuresOf({ output, voltage, rate }: LagRows): readonly Float64Array[] {
  if (voltage === null) return [output, output.map((value) => value ** 2)];
  const mean = meanBetween(voltage, 0, voltage.length);
  const ahead = rowsHeld(voltage, rate);
  const volts = voltage.map((_, row) => (voltage[Math.min(voltage.length - 1, row + ahead)] ?? mean) / mean);
  const told = output.map((value, row) => value * (volts[row] as number));
  return [told, told.map((value) => value ** 2), volts];
}

/**
 * A sensor of the pack says the mean of some milliseconds, and says it until it has the next: its value is so many rows
 * old, in the mean. How long it holds one tells.
 */
function rowsHeld(voltage: Float64Array, rate: number): number {
  const changes = voltage.reduce(
    (sum, value, row) => sum + (row > 0 && value !== voltage[row - 1] ? 1 : 0),
    0,
  );
  const held = changes === 0 ? 0 : voltage.length / changes;
  return held < 2 || held > longestHeld * rate ? 0 : Math.round(held);
}

/** Longer than this a value is not held, but the same, s. */
const longestHeld = 0.06;

function tryLag({ features, target, rate, rises }: Fitting, guess: Guess): Tried {
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
  { seconds, skew, uneven }: Guess,
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
function bandPassed(values: Float64Array, rate: number): Float64Array {
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

function powerOf(values: Float64Array): number {
  return values.reduce((sum, value) => sum + value ** 2, 0);
}

function deviationOf(values: Float64Array): number {
  return Math.sqrt(powerOf(values) / values.length);
}

/** What a parabola, and a voltage that is measured too seldom, leave open: a share. */
const modelError = 0.085;

/** ms; of equal weight how quickly it answers up and down: 2/(1/up + 1/down). */
function spanOf(tries: readonly Tried[], count: number, correlation: number, rest: number): MeasuredSpan {
  const independent = Math.max(4, (count * (1 - correlation)) / (1 + correlation));
  const weights = tries.map((one) => Math.exp((-independent / 2) * Math.log(one.rest / rest)));
  const all = weights.reduce((sum, weight) => sum + weight, 0);
  const over = (of: (seconds: number) => number) =>
    tries.reduce(
      (sum, { seconds, uneven }, at) => sum + of(seconds * (1 - uneven ** 2)) * (weights[at] ?? 0),
      0,
    ) / all;
  const mean = over((seconds) => seconds);
  const off = Math.hypot(1.645 * Math.sqrt(over((seconds) => (seconds - mean) ** 2)), modelError * mean);
  return { likely: 1000 * mean, low: 1000 * (mean - off), high: 1000 * (mean + off), unit: 'ms' };
}
