import { type Complex, one, over, times } from '../../physics/complex';
import type { CrossSpectra } from '../../physics/cross-spectrum';
import { chainResponse, type DigitalFilter } from '../../physics/filter';
import { leastSquaresOfSums } from '../../physics/least-squares';
import { type GainSpectra, gainSignal } from './gain-signals';

/** What the board does between gyro and command, as far as the script says. */
export interface KnownPath {
  readonly gyroFilters: readonly DigitalFilter[];
  readonly derivativeFilters: readonly DigitalFilter[];
  readonly feedforwardFilters: readonly DigitalFilter[];
  /** Hz; 0: not known. */
  readonly controlRate: number;
  /** Whether the derivative looks at the error, and not at the gyro alone. */
  readonly ofError: boolean;
}

export const terms = ['proportional', 'integral', 'derivative', 'feedforward', 'bent'] as const;
export type Term = (typeof terms)[number];

/** What each term counts, in shares of the motors’ range a rad/s, a rad, a rad/s². */
export interface GainFit {
  readonly gains: ReadonlyMap<Term, number>;
  /** Share of the command’s movement that follows. */
  readonly share: number;
  /** How much wider a gain scatters for the terms that move with it: 1 for none. */
  readonly inflation: ReadonlyMap<Term, number>;
  /** By so much the commands are older than the rest of their rows, s. */
  readonly skew: number;
}

export interface FitSetup {
  readonly terms: readonly Term[];
  readonly path: KnownPath;
  /** Hz */
  readonly from: number;
  readonly to: number;
  /** Whether only what goes with the wanted rate counts: noise that rows too seldom fold down does not. */
  readonly byWanted: boolean;
  readonly skews: readonly number[];
}

/** A signal times what is done to it at a frequency. */
type Part = readonly [signal: number, done: (frequency: number) => Complex];

/** Which signals a term is made of. */
function partsOf(term: Term, { rate, isUnfiltered }: GainSpectra, path: KnownPath): readonly Part[] {
  const gyro = (frequency: number) =>
    isUnfiltered ? chainResponse({ filters: path.gyroFilters }, frequency) : one;
  const plain = () => one;
  const minus = (of: (frequency: number) => Complex) => (frequency: number) => negative(of(frequency));
  const slope = (frequency: number) =>
    times(
      slopeBeside(frequency, rate, path.controlRate),
      chainResponse({ filters: path.derivativeFilters }, frequency),
    );
  switch (term) {
    case 'proportional':
      return [
        [gainSignal.wanted, plain],
        [gainSignal.gyro, minus(gyro)],
      ];
    case 'integral':
      return [
        [gainSignal.wantedSum, plain],
        [gainSignal.gyroSum, minus(gyro)],
      ];
    case 'derivative': {
      const turning: Part = [gainSignal.gyroSlope, minus((at) => times(slope(at), gyro(at)))];
      return path.ofError ? [[gainSignal.wantedSlope, slope], turning] : [turning];
    }
    case 'feedforward':
      return [
        [
          gainSignal.wantedSlope,
          (at) =>
            times(
              slopeBeside(at, rate, path.controlRate),
              chainResponse({ filters: path.feedforwardFilters }, at),
            ),
        ],
      ];
    case 'bent':
      return [[gainSignal.bent, plain]];
  }
}

function negative({ re, im }: Complex): Complex {
  return { re: -re, im: -im };
}

/**
 * The board’s own difference of two rounds over the difference of the rows before and after: (1 − z⁻¹) f over i sin(ωT)/T.
 * Near 1 where rows come often enough, so that a window hardly tells the two apart.
 */
function slopeBeside(frequency: number, rate: number, controlRate: number): Complex {
  const turn = 2 * Math.PI * frequency;
  const ofRows = { re: 0, im: Math.sin(turn / rate) * rate };
  const board =
    controlRate > 0
      ? {
          re: controlRate * (1 - Math.cos(turn / controlRate)),
          im: controlRate * Math.sin(turn / controlRate),
        }
      : { re: 0, im: turn };
  return over(board, ofRows);
}

/** The cross spectrum of two signals, or only what goes with the wanted rate: conj(Swi) Swj / Sww. */
function crossAt(sums: PairSums, byWanted: boolean, bin: number) {
  const of = (i: number, j: number): Complex => ({ re: sums.re(i, j, bin), im: sums.im(i, j, bin) });
  if (!byWanted) return of;
  const power = sums.re(gainSignal.wanted, gainSignal.wanted, bin);
  return (i: number, j: number): Complex => {
    if (!(power > 0)) return { re: 0, im: 0 };
    const { re, im } = times(of(i, gainSignal.wanted), of(gainSignal.wanted, j));
    return { re: re / power, im: im / power };
  };
}

/**
 * The gains with the least squares of what they leave of the command, over all bins of a band; each a plain number, the
 * same at every frequency. Tried with each skew; the one that leaves the least is taken. Null where the terms can’t be told
 * apart. Linear regression on frequency responses with known filters; with the wanted rate as instrument where `byWanted`.
 * Source: L. Ljung, System Identification (1999), sections 7.6 (instrumental variables) and 13.5 (closed loops).
 */
export function fitGains(spectra: GainSpectra, sums: PairSums, setup: FitSetup): GainFit | null {
  const bins = [...sums.frequencies.keys()].filter((bin) => {
    const frequency = sums.frequencies[bin] ?? 0;
    return bin > 0 && frequency >= setup.from && frequency <= setup.to;
  });
  const parts = setup.terms.map((term) => partsOf(term, spectra, setup.path));
  const made = bins.map((bin) => {
    const frequency = sums.frequencies[bin] ?? 0;
    return {
      turn: 2 * Math.PI * frequency,
      ...columnsAt(
        parts.map((all) => all.map(([which, done]) => [which, done(frequency)] as const)),
        crossAt(sums, setup.byWanted, bin),
      ),
    };
  });
  const normal = setup.terms.map((_, i) =>
    setup.terms.map((_, j) => made.reduce((sum, { between }) => sum + (between[i]?.[j] ?? 0), 0)),
  );
  const power = made.reduce((sum, { command }) => sum + command, 0);
  // Columns of like size: sums and slopes of a signal are far from it.
  const sizes = normal.map((row, i) => Math.sqrt(row[i] ?? 0));
  if (sizes.some((size) => !(size > 0)) || !(power > 0)) return null;
  const scaled = normal.map((row, i) => row.map((value, j) => value / ((sizes[i] ?? 1) * (sizes[j] ?? 1))));
  let best: {
    left: number;
    skew: number;
    solved: NonNullable<ReturnType<typeof leastSquaresOfSums>>;
  } | null = null;
  for (const skew of setup.skews) {
    const right = setup.terms.map(
      (_, i) =>
        made.reduce((sum, { turn, toCommand }) => {
          const { re, im } = toCommand[i] ?? { re: 0, im: 0 };
          // A command that is older stands turned back; the columns are turned with it.
          return sum + re * Math.cos(turn * skew) - im * Math.sin(turn * skew);
        }, 0) / (sizes[i] ?? 1),
    );
    const solved = leastSquaresOfSums(scaled, right);
    if (solved === null) return null;
    const left = power - solved.coefficients.reduce((sum, value, i) => sum + value * (right[i] ?? 0), 0);
    if (best === null || left < best.left) best = { left, skew, solved };
  }
  if (best === null) return null;
  const { left, skew, solved } = best;
  return {
    gains: new Map(setup.terms.map((term, i) => [term, (solved.coefficients[i] ?? 0) / (sizes[i] ?? 1)])),
    share: 1 - left / power,
    inflation: new Map(setup.terms.map((term, i) => [term, Math.sqrt(solved.inverse[i]?.[i] ?? 0)])),
    skew,
  };
}

/** How the columns of a bin go summed, and with the command. */
function columnsAt(
  columns: readonly (readonly (readonly [signal: number, done: Complex])[])[],
  cross: (i: number, j: number) => Complex,
) {
  const conjugate = ({ re, im }: Complex): Complex => ({ re, im: -im });
  const between = columns.map((left) =>
    columns.map((right) => {
      let sum = 0;
      for (const [i, before] of left)
        for (const [j, after] of right) sum += times(times(conjugate(before), after), cross(i, j)).re;
      return sum;
    }),
  );
  const toCommand = columns.map((left) => {
    let [re, im] = [0, 0];
    for (const [i, before] of left) {
      const all = times(conjugate(before), cross(i, gainSignal.command));
      re += all.re;
      im += all.im;
    }
    return { re, im };
  });
  return { between, toCommand, command: cross(gainSignal.command, gainSignal.command).re };
}

/** Cross spectra of each two signals, summed over segments. */
export interface PairSums {
  readonly frequencies: Float64Array;
  readonly segments: number;
  readonly re: (one: number, other: number, bin: number) => number;
  readonly im: (one: number, other: number, bin: number) => number;
}

/** Sums of some parts of a flight as if they were one. */
export function summed(blocks: readonly CrossSpectra[]): PairSums {
  const [first] = blocks;
  const count = first?.count ?? 0;
  const bins = first?.frequencies.length ?? 0;
  const sums = Array.from({ length: count * count }, (_, pair) => {
    const all = { re: new Float64Array(bins), im: new Float64Array(bins) };
    for (const block of blocks) {
      const { re, im } = block.between(Math.floor(pair / count), pair % count);
      for (let bin = 0; bin < bins; bin += 1) {
        all.re[bin] = (all.re[bin] ?? 0) + block.segments * (re[bin] ?? 0);
        all.im[bin] = (all.im[bin] ?? 0) + block.segments * (im[bin] ?? 0);
      }
    }
    return all;
  });
  return {
    frequencies: first?.frequencies ?? new Float64Array(0),
    segments: blocks.reduce((sum, one) => sum + one.segments, 0),
    re: (one, other, bin) => sums[one * count + other]?.re[bin] ?? 0,
    im: (one, other, bin) => sums[one * count + other]?.im[bin] ?? 0,
  };
}
