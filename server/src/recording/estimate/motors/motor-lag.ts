import type { MeasuredAnswer, MeasuredSpan } from '../../report';
import { measuredBy, withheld } from '../span';
import {
  bandPassed,
  correlationOf,
  delayedBy,
  deviationOf,
  fittingOf,
  type LagFitting,
  type LagGuess,
  powerOf,
  type TriedLag,
  tryLag,
} from './lag-fit';
import type { LagRows } from './lag-rows';

/** Time constants that are tried first, s, by equal factors. */
const tried = { from: 0.004, to: 0.25, factor: 1.2 };
/** How much later one column may be than the other, with the command's way to the motor, s; first by every second. */
const skews = [-0.002, -0.001, 0, 0.001, 0.002, 0.003, 0.004, 0.005, 0.006] as const;
const coarseSkews = skews.filter((_, at) => at % 2 === 0);
/** By which share of their mean a motor slows down later, and quickens sooner: brakes are weaker than drive. */
const unevens = [-0.12, -0.06, 0, 0.06, 0.12, 0.18, 0.24, 0.3] as const;
const leastRate = 100;
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
export function* lagOf(rows: LagRows): Generator<void, MeasuredAnswer<MeasuredSpan>> {
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
  const moved = powerOf(fitting.target);
  if (!(moved > 0))
    return withheld(
      'The speed that was logged is the same all the time.',
      'Confirm the columns of speeds, and that the board reads them in flight.',
    );
  const start: LagGuess = { seconds: 0.03, skew: 0, uneven: 0 };
  const about = ({ seconds }: LagGuess, share: number, factor: number) =>
    factors(seconds / share, seconds * share, factor);
  // A longer lag and an uneven one look alike until both are tried together.
  const all = factors(tried.from, tried.to, tried.factor);
  const coarse = best(yield* triesOf(fittingOf(firstOf(rows)), start, { all, skews: coarseSkews }));
  const uneven = best(yield* triesOf(fitting, coarse, { all: about(coarse, 1.4, 1.08), unevens }));
  const skewed = best(yield* triesOf(fitting, uneven, { all: about(uneven, 1.2, 1.05), skews }));
  const close = unevens.map((one) => skewed.uneven + one / 4);
  const fine = yield* triesOf(fitting, skewed, { all: about(skewed, 1.12, 1.02), unevens: close });
  const closest = best(fine);
  const { rest, seconds } = closest;
  const fit = 1 - rest / moved;
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
  const span = spanOf(fine, rows.output.length, correlationOf(fitting, closest), rest);
  if (span.high - span.low > widest * span.likely)
    return withheld(
      'The motor’s quick movements were too few to tell a longer lag from an uneven one.',
      'Fly half a minute with quick rolls, or short bursts of throttle.',
    );
  return measuredBy(span, basisOf(rows, fit, closest));
}

/** So many rows tell well enough where to look closer. */
const firstRows = 4000;

function firstOf({ rate, output, speed, voltage }: LagRows): LagRows {
  const first = (values: Float64Array) => values.subarray(0, firstRows);
  return {
    rate,
    output: first(output),
    speed: first(speed),
    voltage: voltage === null ? null : first(voltage),
  };
}

function basisOf({ output, rate }: LagRows, fit: number, { seconds, uneven }: LagGuess): string {
  const [up, down] = [1 - uneven, 1 + uneven].map((share) => (1000 * share * seconds).toFixed(0));
  const ways = up === down ? '' : `; up in ${up} ms, down in ${down} ms`;
  return `${(output.length / rate).toFixed(0)} s, with ${Math.round(100 * fit)} % of the speed’s movement told${ways}`;
}

function* triesOf(
  fitting: LagFitting,
  about: LagGuess,
  over: {
    readonly all?: readonly number[];
    readonly skews?: readonly number[];
    readonly unevens?: readonly number[];
  },
): Generator<void, readonly TriedLag[]> {
  const tries: TriedLag[] = [];
  for (const skew of over.skews ?? [about.skew]) {
    const delayed = delayedBy(fitting, skew);
    for (const seconds of over.all ?? [about.seconds])
      for (const uneven of over.unevens ?? [about.uneven]) {
        tries.push(tryLag(fitting, { seconds, skew, uneven }, delayed));
        yield;
      }
  }
  return tries;
}

function factors(from: number, to: number, factor: number): readonly number[] {
  return Array.from(
    { length: Math.ceil(Math.log(to / from) / Math.log(factor)) + 1 },
    (_, at) => from * factor ** at,
  );
}

function best(tries: readonly TriedLag[]): TriedLag {
  return tries.reduce((least, one) => (one.rest < least.rest ? one : least));
}

/** A span that is wider than this share of itself tells nobody anything. Ours. */
const widest = 0.27;

/**
 * What an output does between two rows nobody sees: a motor that quickens sooner than it slows down follows its jumps up,
 * and is taken for slower than it is, on simulated flights by a twentieth. How far the truth lies below and above what the
 * rows say; shares.
 */
const modelError = { usual: 0.05, low: 0.135, high: 0.02 };

/** ms; of equal weight how quickly it answers up and down: 2/(1/up + 1/down). */
function spanOf(tries: readonly TriedLag[], count: number, correlation: number, rest: number): MeasuredSpan {
  const independent = Math.max(4, (count * (1 - correlation)) / (1 + correlation));
  const weights = tries.map((one) => Math.exp((-independent / 2) * Math.log(one.rest / rest)));
  const all = weights.reduce((sum, weight) => sum + weight, 0);
  const over = (of: (seconds: number) => number) =>
    tries.reduce(
      (sum, { seconds, uneven }, at) => sum + of(seconds * (1 - uneven ** 2)) * (weights[at] ?? 0),
      0,
    ) / all;
  const mean = over((seconds) => seconds);
  const scatter = 1.645 * Math.sqrt(over((seconds) => (seconds - mean) ** 2));
  const off = (share: number) => Math.hypot(scatter, share * mean);
  return {
    likely: 1000 * (1 - modelError.usual) * mean,
    low: 1000 * (mean - off(modelError.low)),
    high: 1000 * (mean + off(modelError.high)),
    unit: 'ms',
  };
}
