import { type Complex, times } from '../../../physics/complex';
import { leastSquaresOfSums } from '../../../physics/least-squares';
import { type GainSpectra, gainSignal } from './gain-signals';
import { type KnownPath, partsOfTerm, type Term } from './gain-terms';
import { type PairSums, pairAt } from './pair-sums';

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
  /** How much older commands may be than the gyro of their row, and rows in which the wanted rate is late by so much, s. */
  readonly skews: readonly number[];
  readonly late: readonly number[];
  /** Terms of which the script says what they count. */
  readonly known: ReadonlyMap<Term, number>;
}

type Cross = (i: number, j: number) => Complex;

/** The cross spectrum of two signals in a bin, or only what goes with the wanted rate: conj(Swi) Swj / Sww. */
function crossAt(sums: PairSums, byWanted: boolean, bin: number): Cross {
  const of = (i: number, j: number): Complex => pairAt(sums, i, j, bin);
  if (byWanted) {
    const { re: power } = of(gainSignal.wanted, gainSignal.wanted);
    return (i, j) => {
      if (!(power > 0)) return { re: 0, im: 0 };
      const { re, im } = times(of(i, gainSignal.wanted), of(gainSignal.wanted, j));
      return { re: re / power, im: im / power };
    };
  }
  return of;
}

/**
 * The gains with the least squares of what they leave of the command, over all bins of a band; each a plain number, the
 * same at every frequency. Tried with each skew; the one that leaves the least is taken. Null where the terms can’t be told
 * apart. Linear regression on frequency responses with known filters; with the wanted rate as instrument where `byWanted`.
 * Source: L. Ljung, System Identification (1999), sections 7.6 (instrumental variables) and 13.5 (closed loops).
 */
export function fitGains(spectra: GainSpectra, sums: PairSums, setup: FitSetup): GainFit | null {
  let best: TriedFit | null = null;
  for (const late of setup.late) {
    const bins = binsOf(spectra, sums, setup, late);
    for (const skew of setup.skews) {
      const tried = tryFit(bins, setup, skew);
      if (tried !== null && (best === null || tried.left < best.left)) best = tried;
    }
  }
  return best === null ? null : best.fit;
}

interface Bin extends ReturnType<typeof columnsAt> {
  /** rad/s */
  readonly turn: number;
}

function binsOf(
  spectra: GainSpectra,
  sums: PairSums,
  { terms: tried, known, path, from, to, byWanted }: FitSetup,
  late: number,
): readonly Bin[] {
  const parts = [...tried, ...known.keys()].map((term) => partsOfTerm(term, spectra, path, late));
  return [...sums.frequencies.keys()].flatMap((bin) => {
    const frequency = sums.frequencies[bin] ?? 0;
    if (bin === 0 || frequency < from || frequency > to) return [];
    const columns = parts.map((all) => all.map(([which, done]) => [which, done(frequency)] as const));
    return [{ turn: 2 * Math.PI * frequency, ...columnsAt(columns, crossAt(sums, byWanted, bin)) }];
  });
}

interface TriedFit {
  readonly left: number;
  readonly fit: GainFit;
}

function tryFit(bins: readonly Bin[], { terms: tried, known }: FitSetup, skew: number): TriedFit | null {
  const values = [...known.values()];
  const all = Array.from({ length: tried.length + values.length }, (_, at) => at);
  const normal = all.map((i) =>
    all.map((j) => bins.reduce((sum, { between }) => sum + (between[i]?.[j] ?? 0), 0)),
  );
  // A command that is older stands turned back; the columns are turned with it.
  const whole = all.map((i) =>
    bins.reduce((sum, { turn, toCommand }) => {
      const { re, im } = toCommand[i] ?? { re: 0, im: 0 };
      return sum + re * Math.cos(turn * skew) - im * Math.sin(turn * skew);
    }, 0),
  );
  const power = bins.reduce((sum, { command }) => sum + command, 0);
  const fixed = values.map((value, at) => ({ value, at: tried.length + at }));
  const rest =
    power -
    fixed.reduce((sum, { value, at }) => sum + 2 * value * (whole[at] ?? 0), 0) +
    squareOf(fixed, normal);
  const right = whole
    .slice(0, tried.length)
    .map((one, i) => one - fixed.reduce((sum, { value, at }) => sum + value * (normal[i]?.[at] ?? 0), 0));
  // Columns of like size: sums and slopes of a signal are far from it.
  const sizes = tried.map((_, i) => Math.sqrt(normal[i]?.[i] ?? 0));
  if (sizes.some((size) => !(size > 0)) || !(power > 0)) return null;
  const scaled = sizes.map((size, i) => sizes.map((other, j) => (normal[i]?.[j] ?? 0) / (size * other)));
  const solved = leastSquaresOfSums(
    scaled,
    right.map((one, i) => one / (sizes[i] ?? 1)),
  );
  if (solved === null) return null;
  const { coefficients, inverse } = solved;
  const left =
    rest - coefficients.reduce((sum, value, i) => sum + (value * (right[i] ?? 0)) / (sizes[i] ?? 1), 0);
  return {
    left,
    fit: {
      gains: new Map(tried.map((term, i) => [term, (coefficients[i] ?? 0) / (sizes[i] ?? 1)])),
      share: 1 - left / power,
      inflation: new Map(tried.map((term, i) => [term, Math.sqrt(Math.max(0, inverse[i]?.[i] ?? 0))])),
      skew,
    },
  };
}

/** The power of what fixed terms add up to. */
function squareOf(
  fixed: readonly { readonly value: number; readonly at: number }[],
  normal: readonly (readonly number[])[],
): number {
  return fixed.reduce(
    (sum, one) =>
      sum +
      fixed.reduce((all, other) => all + one.value * other.value * (normal[one.at]?.[other.at] ?? 0), 0),
    0,
  );
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
