import { dot, leastSquares } from '../../../physics/least-squares';
import type { MeasuredSpan } from '../../report';
import type { PackRows } from './pack-rows';

/** V and ohm. */
export interface PackFit {
  /** Before anything was taken. */
  readonly open: MeasuredSpan;
  readonly atOneSecond: MeasuredSpan;
  readonly atTenSeconds: MeasuredSpan;
}

/** What comes at once has a quick part, s; the slow one is tried at these. */
const quickest = 0.18;
const slowest = [2, 2.8, 4, 5.6, 8, 11] as const;

/**
 * What packs have mostly, as shares of the resistance at one second, with deviations: the quick part, and the slow one,
 * by which it grows by about a quarter until ten seconds. Common practice; what the flight tells outweighs it.
 */
const usual = { quick: { mean: 0.18, off: 0.08 }, slow: { mean: 0.28, off: 0.12 } } as const;

/**
 * The circuit of a pack: V = E − E' q − R0 I − R1 (I lagged by τ1) − R2 (I lagged by τ2), q the charge taken, by least
 * squares, for several τ2 that count by how well they do. After t seconds a load meets R0 + Σ R (1 − e^(−t/τ)).
 * Source: M. Chen, G. Rincón-Mora, Accurate electrical battery model, IEEE Transactions on Energy Conversion 21(2), 2006.
 */
export function* packFit(rows: PackRows): Generator<void, PackFit | null> {
  const first = fitted(rows, 4, null);
  if (first === null || !(first.one.mean > 0)) return null;
  const fits: PackModel[] = [];
  for (const slow of slowest) {
    const fit = fitted(rows, slow, first.one.mean);
    if (fit !== null) fits.push(fit);
    yield;
  }
  const least = Math.min(...fits.map(({ rest }) => rest));
  const weights = fits.map(({ rest, independent }) => Math.exp((-independent / 2) * Math.log(rest / least)));
  const mixed = (of: (fit: PackModel) => Guess, unit: string, error = sensorError): MeasuredSpan => {
    const all = weights.reduce((sum, weight) => sum + weight, 0);
    const over = (value: (guess: Guess) => number) =>
      fits.reduce((sum, fit, at) => sum + (weights[at] ?? 0) * value(of(fit)), 0) / all;
    const mean = over((guess) => guess.mean);
    const square = over((guess) => guess.variance + (guess.mean - mean) ** 2);
    const off = Math.hypot(1.645 * Math.sqrt(square), error * mean);
    return { likely: mean, low: mean - off, high: mean + off, unit };
  };
  const atTenSeconds = mixed(({ ten }) => ten, 'ohm', Math.hypot(sensorError, circuitError.ten));
  if (fits.length === 0 || !(atTenSeconds.likely > 0)) return null;
  const open = mixed(({ open: guess }) => guess, 'V');
  return {
    open: { ...open, ...openSpan(open) },
    atOneSecond: mixed(({ one }) => one, 'ohm', Math.hypot(sensorError, circuitError.one)),
    atTenSeconds,
  };
}

/** Sensors that were calibrated tell a resistance to this share. Common practice. */
const sensorError = 0.02;

/**
 * What a circuit of two parts leaves open, and a voltage at rest that comes down in a straight line: shares, on
 * simulated flights whose packs have other time constants and a curve.
 */
const circuitError = { one: 0.025, ten: 0.05 } as const;

/** Of the voltage the sensor's error is smaller by far: half a percent. */
function openSpan({ likely, low, high }: MeasuredSpan): Pick<MeasuredSpan, 'low' | 'high'> {
  const scatter = Math.sqrt(Math.max(0, ((high - low) / 2) ** 2 - (sensorError * likely) ** 2));
  const off = Math.hypot(scatter, 0.005 * likely);
  return { low: likely - off, high: likely + off };
}

interface Guess {
  readonly mean: number;
  readonly variance: number;
}

interface PackModel {
  readonly open: Guess;
  readonly one: Guess;
  readonly ten: Guess;
  readonly rest: number;
  /** How many rows of which each is off by itself leave as much open. */
  readonly independent: number;
}

/** `resistance` at one second, to lean on what packs have mostly; null: that is not known yet. */
function fitted(rows: PackRows, slow: number, resistance: number | null): PackModel | null {
  const { voltage, isFilled } = rows;
  const kept = voltage.flatMap((volts, at) => (isFilled[at] || Number.isNaN(volts) ? [] : [at]));
  const features = circuitRows(rows, kept, slow);
  const values = smoothed(kept.map((at) => voltage[at] ?? 0));
  // A first look with what is usual for a resistance of any size tells the noise, a second leans on it.
  const size = features[0]?.length ?? 5;
  const noise = resistance === null ? 0.02 : (fitOf(features, values, null)?.noise ?? 0.02);
  const lean =
    resistance === null
      ? usualShares(size, noise)
      : usualResistances(size, noise, resistance, Math.abs(values[0] ?? 1));
  const fit = fitOf([...features, ...lean.rows], [...values, ...lean.values], features.length);
  if (fit === null) return null;
  const along = (seconds: number) => {
    const [quickShare, slowShare] = [1 - Math.exp(-seconds / quickest), 1 - Math.exp(-seconds / slow)];
    return guessOf(fit, rowOf(size, { 2: 1, 3: quickShare, 4: slowShare }));
  };
  return {
    open: guessOf(fit, rowOf(size, { 0: 1 })),
    one: along(1),
    ten: along(10),
    rest: fit.rest,
    independent: fit.independent,
  };
}

/**
 * What the voltage hangs on in the rows that are kept. By column: 0 nothing, 1 the charge taken, 2 the current, 3 and 4
 * the current lagged by the quick and the slow part; in longer flights 5 and 6 the bend of the voltage at rest.
 */
function circuitRows(
  { step, current, seconds }: PackRows,
  kept: readonly number[],
  slow: number,
): readonly (readonly number[])[] {
  const [quickLag, slowLag] = [lagged(current, step, quickest), lagged(current, step, slow)];
  const charge = taken(current, step);
  const whole = charge.at(-1) ?? 1;
  const bends = seconds > 120;
  const raw = kept.map((at) => {
    const share = (charge[at] ?? 0) / whole;
    return [
      1,
      -share,
      -(current[at] ?? 0),
      -(quickLag[at] ?? 0),
      -(slowLag[at] ?? 0),
      ...(bends ? [-(share ** 2), -(share ** 3)] : []),
    ];
  });
  const columns = (raw[0] ?? []).map((_, column) => smoothed(raw.map((one) => one[column] ?? 0)));
  return raw.map((_, at) => columns.map((column) => column[at] ?? 0));
}

/** Rows that say what is usual, as the rows of the flight say what was measured. */
interface UsualRows {
  readonly rows: readonly (readonly number[])[];
  readonly values: readonly number[];
}

/** The parts keep their usual shares of each other, whatever the resistance is. */
function usualShares(size: number, noise: number): UsualRows {
  const rows = [rowOf(size, { 2: -usual.quick.mean, 3: 0.6 }), rowOf(size, { 2: -usual.slow.mean, 4: 0.6 })];
  return { rows: rows.map((one) => one.map((value) => value * 1e4 * noise)), values: [0, 0] };
}

function usualResistances(size: number, noise: number, resistance: number, volts: number): UsualRows {
  const { quick, slow } = usual;
  return {
    rows: [
      rowOf(size, { 3: noise / (quick.off * resistance) }),
      rowOf(size, { 4: noise / (slow.off * resistance) }),
      // A pack that empties comes down.
      rowOf(size, { 1: noise / (2 * Math.max(0.05, volts * 0.05)) }),
    ],
    values: [(noise * quick.mean) / quick.off, (noise * slow.mean) / slow.off, 0],
  };
}

/** A row with these columns, and nothing in the others. */
function rowOf(size: number, columns: Readonly<Record<number, number>>): readonly number[] {
  return Array.from({ length: size }, (_, at) => columns[at] ?? 0);
}

interface LinearFit {
  readonly coefficients: readonly number[];
  readonly inverse: readonly (readonly number[])[];
  /** Deviation of what is left, as if each row were off by itself, and of that many rows the mean would scatter so. */
  readonly noise: number;
  readonly rest: number;
  readonly independent: number;
}

/** `count` of the rows are measured, the others lean. */
function fitOf(
  features: readonly (readonly number[])[],
  values: readonly number[],
  count: number | null,
): LinearFit | null {
  const fit = leastSquares(features, values);
  if (fit === null) return null;
  const residuals = fit.residuals.slice(0, count ?? undefined);
  const rest = dot(residuals, residuals);
  const next = residuals.slice(1).reduce((sum, one, at) => sum + one * (residuals[at] ?? 0), 0);
  const correlation = Math.min(0.97, Math.max(0, next / rest));
  const widening = (1 + correlation) / (1 - correlation);
  const variance = (rest / Math.max(1, residuals.length - 5)) * widening;
  return {
    coefficients: fit.coefficients,
    inverse: fit.inverse.map((line) => line.map((one) => one * variance)),
    noise: Math.sqrt(variance),
    rest,
    independent: residuals.length / widening,
  };
}

function guessOf({ coefficients, inverse }: LinearFit, weights: readonly number[]): Guess {
  return {
    mean: dot(coefficients, weights),
    variance: dot(
      weights,
      inverse.map((line) => dot(line, weights)),
    ),
  };
}

/** Rows of half a second together: what a current's own noise moves, no voltage follows, and it would look softer. */
const together = 5;

/** What is linear stays as it is to each other when all of it is smoothed alike. */
function smoothed(values: readonly number[]): readonly number[] {
  const half = together >> 1;
  return values.map((_, at) => {
    const near = values.slice(Math.max(0, at - half), at + half + 1);
    return near.reduce((sum, one) => sum + one, 0) / near.length;
  });
}

/** A first-order lag from rest, of what flows meanwhile: its mean over each step. */
function lagged(values: readonly number[], step: number, seconds: number): readonly number[] {
  const keep = Math.exp(-step / seconds);
  // Over a step the lag comes from its old state towards the new value; this is its mean.
  const within = (seconds / step) * (1 - keep);
  let state = 0;
  return values.map((value) => {
    const mean = value + (state - value) * within;
    state = value + (state - value) * keep;
    return mean;
  });
}

function taken(current: readonly number[], step: number): readonly number[] {
  let sum = 0;
  return current.map((value) => {
    sum += value * step;
    return sum - (value * step) / 2;
  });
}
