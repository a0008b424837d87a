import { fourierOf } from './fourier';
import { type WindowName, windowOf, windowOverlap } from './window';

export interface WelchSetup {
  /** Samples a second, Hz. */
  readonly rate: number;
  /** Samples in a segment; a power of two is quickest. */
  readonly segment: number;
  /** Samples that a segment shares with the next. */
  readonly overlap: number;
  readonly window: WindowName;
  /** What is taken out of each segment before it is looked at. */
  readonly without: 'mean' | 'line' | 'nothing';
}

/** Half of each segment is shared, and its mean taken out: the usual way. */
export function usualWelch(rate: number, segment: number): WelchSetup {
  return { rate, segment, overlap: Math.floor(segment / 2), window: 'hann', without: 'mean' };
}

/** How a segment's power lies along frequency. */
export interface Segments {
  readonly setup: WelchSetup;
  /** Hz of the bins, from 0 to half the rate. */
  readonly frequencies: Float64Array;
  /** Adds the density (unit²/Hz, one-sided) of a segment to a sum. False: it holds a cell without a number. */
  readonly addTo: (sum: Float64Array, values: ArrayLike<number>, from: number) => boolean;
}

/**
 * The one-sided density of a segment: |X[k]|² / (rate Σw²), bins between 0 and half the rate twice.
 * Source: P. D. Welch, The use of fast Fourier transform for the estimation of power spectra (1967).
 */
export function segmentsOf(setup: WelchSetup): Segments {
  const { rate, segment } = setup;
  const binsAt = segmentBins(setup);
  const scale = densityScale(setup);
  const frequencies = Float64Array.from(
    { length: Math.floor(segment / 2) + 1 },
    (_, bin) => (bin * rate) / segment,
  );
  const addTo = (sum: Float64Array, values: ArrayLike<number>, from: number) => {
    const bins = binsAt(values, from);
    if (bins === null) return false;
    for (let bin = 0; bin < sum.length; bin += 1) {
      const [re, im] = [bins[2 * bin] ?? 0, bins[2 * bin + 1] ?? 0];
      sum[bin] = (sum[bin] ?? 0) + sidesOf(bin, segment) * scale * (re * re + im * im);
    }
    return true;
  };
  return { setup, frequencies, addTo };
}

/** What makes a density of the square of a bin: 1 / (rate Σw²). */
export function densityScale({ rate, segment, window }: WelchSetup): number {
  return 1 / (rate * windowOf(window, segment).reduce((sum, value) => sum + value ** 2, 0));
}

/** In a one-sided density a bin stands for its mirror as well, but for those that have none. */
export function sidesOf(bin: number, segment: number): number {
  return bin === 0 || 2 * bin === segment ? 1 : 2;
}

/**
 * Reads the bins of a windowed segment, real and imaginary parts in turn, written over by the next call; null: it holds a
 * cell without a number.
 */
export function segmentBins({
  window,
  segment,
  without,
}: WelchSetup): (values: ArrayLike<number>, from: number) => ArrayLike<number> | null {
  const weights = windowOf(window, segment);
  const fourier = fourierOf(segment);
  const room = new Float64Array(segment);
  const middle = (segment - 1) / 2;
  return (values, from) => {
    for (let at = 0; at < segment; at += 1) room[at] = values[from + at] ?? Number.NaN;
    const { mean, slope } = trendOf(room);
    if (Number.isNaN(mean)) return null;
    const [off, by] = [without === 'nothing' ? 0 : mean, without === 'line' ? slope : 0];
    for (let at = 0; at < segment; at += 1)
      room[at] = ((room[at] ?? 0) - off - by * (at - middle)) * (weights[at] ?? 0);
    return fourier.bins(room);
  };
}

/** Mean, and slope a sample, of the line through values at equal distances. Source: any textbook on regression. */
function trendOf(values: Float64Array): { readonly mean: number; readonly slope: number } {
  const middle = (values.length - 1) / 2;
  let [sum, moment] = [0, 0];
  for (let at = 0; at < values.length; at += 1) {
    sum += values[at] ?? 0;
    moment += (at - middle) * (values[at] ?? 0);
  }
  const width = (values.length * (values.length ** 2 - 1)) / 12;
  return { mean: sum / values.length, slope: width === 0 ? 0 : moment / width };
}

export interface Density {
  readonly frequencies: Float64Array;
  /** unit²/Hz */
  readonly density: Float64Array;
  readonly segments: number;
}

/** The mean density of all segments of some values, as `segmentsOf` has it. */
export function welch(values: ArrayLike<number>, setup: WelchSetup): Density {
  const { frequencies, addTo } = segmentsOf(setup);
  const sum = new Float64Array(frequencies.length);
  let segments = 0;
  for (let from = 0; from + setup.segment <= values.length; from += setup.segment - setup.overlap)
    if (addTo(sum, values, from)) segments += 1;
  return { frequencies, density: sum.map((one) => one / segments), segments };
}

/**
 * From a density to the power of a tone in its bin (A²/2 for an amplitude A): times rate Σw² / (Σw)², Hz.
 * Source: G. Heinzel, A. Rüdiger, R. Schilling, Spectrum and spectral density estimation by the DFT (2002).
 */
export function toneBandwidth({ rate, segment, window }: WelchSetup): number {
  const values = windowOf(window, segment);
  const sum = values.reduce((all, value) => all + value, 0);
  return (rate * values.reduce((all, value) => all + value ** 2, 0)) / sum ** 2;
}

/**
 * How many independent segments would scatter as little as so many that share samples: K / (1 + 2 Σ (1 − m/K) c_m²),
 * with c_m how alike the window is to itself m segments on.
 * Source: P. D. Welch (1967), as above.
 */
export function independentAverages(segments: number, { segment, overlap, window }: WelchSetup): number {
  if (segments === 0) return 0;
  const values = windowOf(window, segment);
  let sum = 0;
  for (let apart = 1; apart < segments && apart * (segment - overlap) < segment; apart += 1)
    sum += (1 - apart / segments) * windowOverlap(values, apart * (segment - overlap)) ** 2;
  return segments / (1 + 2 * sum);
}
