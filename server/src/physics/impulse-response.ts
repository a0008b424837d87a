import type { Along } from './complex';
import { transformedBack } from './fourier';
import { leastSquaresOfSums } from './least-squares';

/**
 * Pxy/(Pxx + r) bin by bin: where little was asked for beside its regulariser r, little is said. A regulariser that is the
 * same for all bins takes most where least was asked for; one that is a share of each bin's own power takes the same of
 * all.
 * Source: A. N. Tikhonov, regularisation of inverse problems, as any textbook on deconvolution has it.
 */
export function regularised(
  input: readonly number[],
  cross: Along,
  regulariser: (bin: number) => number,
): Along {
  const part = (values: readonly number[]) =>
    values.map((value, bin) => value / ((input[bin] ?? 0) + regulariser(bin)));
  return { re: part(cross.re), im: part(cross.im) };
}

/**
 * What comes of a sudden call that stays, sample by sample, of a response in bins 0 to size/2: the impulse response, summed
 * up from some samples before the call on, for what is cut off at a frequency begins a little early.
 * Source: the inverse discrete transform, any textbook on signal processing.
 */
export function stepOf(response: Along, size: number, before = 0): readonly number[] {
  const impulse = transformedBack(response, size);
  let sum = 0;
  for (let at = size - before; at < size; at += 1) sum += impulse[at] ?? 0;
  return impulse.slice(0, size - before).map((value) => {
    sum += value;
    return sum;
  });
}

/** Taps h of y[n] = c + Σ h[k] x[n − k], with what their sum may be off by chance, as a standard deviation. */
export interface ImpulseFit {
  readonly taps: readonly number[];
  readonly sum: number;
  readonly sumDeviation: number;
}

/**
 * The impulse response with the least squares over rows that are added one by one.
 * Source: L. Ljung, System Identification, on finite impulse responses (any textbook on the subject).
 */
export class ImpulseSums {
  readonly #normal: number[][];
  readonly #right: number[];
  readonly #past: number[] = [];
  #squares = 0;
  rows = 0;

  constructor(readonly count: number) {
    this.#normal = Array.from({ length: count + 1 }, () => new Array<number>(count + 1).fill(0));
    this.#right = new Array<number>(count + 1).fill(0);
  }

  /** The next row; the first of them only fill what is looked back on. */
  add(input: number, output: number): void {
    const past = this.#past;
    past.unshift(input);
    if (past.length < this.count) return;
    past.length = this.count;
    const width = this.count + 1;
    const line = [...past, 1];
    for (let one = 0; one < width; one += 1) {
      const own = line[one] ?? 0;
      const into = this.#normal[one] ?? [];
      for (let other = 0; other < width; other += 1)
        into[other] = (into[other] ?? 0) + own * (line[other] ?? 0);
      this.#right[one] = (this.#right[one] ?? 0) + own * output;
    }
    this.#squares += output ** 2;
    this.rows += 1;
  }

  /** What follows is not the next in time. */
  pause(): void {
    this.#past.length = 0;
  }

  /** Null where the rows can't tell the taps apart. `ridge`: a share of the mean power that is added to each tap's own. */
  fit(ridge = 0): ImpulseFit | null {
    const { count } = this;
    const mean = this.#normal.reduce((sum, row, at) => sum + (at < count ? (row[at] ?? 0) : 0), 0) / count;
    const normal = this.#normal.map((row, at) =>
      row.map((value, other) => (at === other && at < count ? value + ridge * mean : value)),
    );
    const solved = leastSquaresOfSums(normal, this.#right);
    if (solved === null || this.rows <= count + 1) return null;
    const taps = solved.coefficients.slice(0, count);
    const rest =
      this.#squares - solved.coefficients.reduce((sum, one, at) => sum + one * (this.#right[at] ?? 0), 0);
    const inverse = solved.inverse
      .slice(0, count)
      .reduce((sum, row) => sum + row.slice(0, count).reduce((all, one) => all + one, 0), 0);
    const variance = (Math.max(0, rest) / (this.rows - count - 1)) * inverse;
    return {
      taps,
      sum: taps.reduce((sum, tap) => sum + tap, 0),
      sumDeviation: Math.sqrt(Math.max(0, variance)),
    };
  }
}
