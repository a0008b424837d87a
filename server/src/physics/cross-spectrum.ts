import type { Along } from './complex';
import { densityScale, segmentBins, segmentsOf, sidesOf, type WelchSetup } from './welch';

/**
 * Mean spectra of signals that were taken together, and between each two of them: Pxy is the mean of conj(X) Y over the
 * segments, one-sided and by hertz as a density is.
 * Source: J. S. Bendat, A. G. Piersol, Random Data, chapter 5 (from memory); the convention is that of SciPy's `csd`.
 */
export class CrossSpectra {
  readonly frequencies: Float64Array;
  /** That were added. */
  segments = 0;
  readonly #readers: readonly ((values: ArrayLike<number>, from: number) => ArrayLike<number> | null)[];
  /** Sums of each pair, real and imaginary parts in turn. */
  readonly #sums: readonly (readonly Float64Array[])[];
  readonly #scale: number;

  /** Of so many signals. */
  constructor(
    readonly setup: WelchSetup,
    readonly count: number,
  ) {
    this.frequencies = segmentsOf(setup).frequencies;
    const signals = Array.from({ length: count }, (_, at) => at);
    this.#readers = signals.map(() => segmentBins(setup));
    this.#sums = signals.map((one) =>
      signals.slice(one).map(() => new Float64Array(2 * this.frequencies.length)),
    );
    this.#scale = densityScale(setup);
  }

  /** Adds a segment of all signals, from a row on. False: a cell of it holds no number. */
  add(signals: readonly ArrayLike<number>[], from: number): boolean {
    const bins = this.#readers.map((read, at) => read(signals[at] ?? [], from));
    for (const [one, own] of bins.entries()) if (own === null) return one < 0;
    for (const [one, sums] of this.#sums.entries())
      for (const [further, sum] of sums.entries())
        addProduct(sum, bins[one] ?? [], bins[one + further] ?? []);
    this.segments += 1;
    return true;
  }

  /** The density of one signal. */
  power(signal: number): readonly number[] {
    return this.between(signal, signal).re;
  }

  /** Pxy of two signals. */
  between(one: number, other: number): Along {
    const isTurned = one > other;
    const [first, second] = isTurned ? [other, one] : [one, other];
    const sum = this.#sums[first]?.[second - first] ?? new Float64Array();
    const { segment } = this.setup;
    const part = (which: number, sign: number) =>
      Array.from(
        { length: this.frequencies.length },
        (_, bin) =>
          (sign * sidesOf(bin, segment) * this.#scale * (sum[2 * bin + which] ?? 0)) / this.segments,
      );
    return { re: part(0, 1), im: part(1, isTurned ? -1 : 1) };
  }
}

function addProduct(sum: Float64Array, one: ArrayLike<number>, other: ArrayLike<number>): void {
  for (let at = 0; at < sum.length; at += 2) {
    const [a, b, c, d] = [one[at] ?? 0, one[at + 1] ?? 0, other[at] ?? 0, other[at + 1] ?? 0];
    sum[at] = (sum[at] ?? 0) + a * c + b * d;
    sum[at + 1] = (sum[at + 1] ?? 0) + a * d - b * c;
  }
}

/** All segments of signals, each so many rows after the one before as the setup says. */
export function crossSpectra(signals: readonly ArrayLike<number>[], setup: WelchSetup): CrossSpectra {
  const spectra = new CrossSpectra(setup, signals.length);
  const rows = Math.min(...signals.map(({ length }) => length));
  for (let from = 0; from + setup.segment <= rows; from += setup.segment - setup.overlap)
    spectra.add(signals, from);
  return spectra;
}
