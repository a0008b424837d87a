import type { Along } from './complex';
import type { CrossSpectra } from './cross-spectrum';

/** What comes of a sine, along frequencies (Hz). */
export interface FrequencyResponse extends Along {
  readonly frequencies: readonly number[];
  /** From 0 to 1: the share of the output's power that follows from the input, by a line. */
  readonly coherence: readonly number[];
  /**
   * Standard deviation by chance of the size as a share of itself, and of the phase in rad, where segments scatter like
   * one independent one: divided by the root of how many there were.
   */
  readonly scatter: readonly number[];
}

/**
 * From one of some signals to another: H1 = Pxy/Pxx, which noise in the output leaves as it is, with the coherence
 * |Pxy|²/(Pxx Pyy).
 * Source: J. S. Bendat, A. G. Piersol, Random Data, chapters 6 and 9 (from memory); the scatter is √((1 − γ²)/(2γ²)) there.
 */
export function frequencyResponse(spectra: CrossSpectra, input: number, output: number): FrequencyResponse {
  const [asked, came] = [spectra.power(input), spectra.power(output)];
  const cross = spectra.between(input, output);
  const coherence = asked.map((power, bin) => coherenceOf(power, came[bin] ?? 0, cross, bin));
  return {
    frequencies: [...spectra.frequencies],
    re: cross.re.map((value, bin) => value / (asked[bin] ?? 0)),
    im: cross.im.map((value, bin) => value / (asked[bin] ?? 0)),
    coherence,
    scatter: coherence.map((share) => responseError(share, 1)),
  };
}

function coherenceOf(one: number, other: number, { re, im }: Along, bin: number): number {
  const product = one * other;
  return product > 0 ? Math.min(1, ((re[bin] ?? 0) ** 2 + (im[bin] ?? 0) ** 2) / product) : 0;
}

/**
 * From one signal to another where both are part of a closed loop that a third, the instrument, drives from outside:
 * P = S(instrument, output) / S(instrument, input). Noise in the loop, which pulls Pxy/Pxx towards −1/controller, does
 * not pull at it. The coherence is the lower of the two from the instrument; the scatter that of the ratio, by what of
 * the output the input does not explain.
 * Source: T. Söderström, P. Stoica, System Identification, on instruments and closed loops (from memory); the scatter
 * by the first order of the ratio.
 */
export function responseByInstrument(
  spectra: CrossSpectra,
  instrument: number,
  input: number,
  output: number,
): FrequencyResponse {
  const [toInput, toOutput] = [spectra.between(instrument, input), spectra.between(instrument, output)];
  const between = spectra.between(input, output);
  const [drive, told, came] = [spectra.power(instrument), spectra.power(input), spectra.power(output)];
  const response: { re: number[]; im: number[]; coherence: number[]; scatter: number[] } = {
    re: [],
    im: [],
    coherence: [],
    scatter: [],
  };
  for (let bin = 0; bin < drive.length; bin += 1) {
    const [a, b] = [toOutput.re[bin] ?? 0, toOutput.im[bin] ?? 0];
    const [c, d] = [toInput.re[bin] ?? 0, toInput.im[bin] ?? 0];
    const size = c * c + d * d;
    const [re, im] = [(a * c + b * d) / size, (b * c - a * d) / size];
    const square = re * re + im * im;
    const explained = 2 * (re * (between.re[bin] ?? 0) + im * (between.im[bin] ?? 0));
    const rest = Math.max(0, (came[bin] ?? 0) - explained + square * (told[bin] ?? 0));
    response.re.push(re);
    response.im.push(im);
    response.coherence.push(
      Math.min(
        coherenceOf(drive[bin] ?? 0, told[bin] ?? 0, toInput, bin),
        coherenceOf(drive[bin] ?? 0, came[bin] ?? 0, toOutput, bin),
      ),
    );
    response.scatter.push(Math.sqrt((rest * (drive[bin] ?? 0)) / (2 * square * size)));
  }
  return { frequencies: [...spectra.frequencies], ...response };
}

/**
 * Standard deviation by chance of the size of H1 as a share of itself, and of its phase in rad: √((1 − γ²)/(2 γ² n)) for a
 * coherence γ² from n independent segments.
 * Source: J. S. Bendat, A. G. Piersol, Random Data, chapter 9 (from memory).
 */
export function responseError(coherence: number, averages: number): number {
  return Math.sqrt((1 - coherence) / (2 * coherence * averages));
}

/** Standard deviation by chance of a coherence as a share of itself: √2 (1 − γ²)/(γ √n). Source: as above. */
export function coherenceError(coherence: number, averages: number): number {
  return (Math.SQRT2 * (1 - coherence)) / Math.sqrt(coherence * averages);
}

/**
 * The coherence that signals with nothing in common stay below with a probability, for n independent segments:
 * 1 − (1 − p)^(1/(n − 1)). Domain: above 1 segment; of one alone everything is coherent.
 * Source: the distribution Beta(1, n − 1), as the Rust crate dsmc 0.13.0 documents it.
 */
export function coherenceByChance(averages: number, probability: number): number {
  return averages > 1 ? 1 - (1 - probability) ** (1 / (averages - 1)) : 1;
}

/** The same response so many seconds later: a wait turns each phase by 2πfT (any textbook on control). */
export function waited<T extends Along & Pick<FrequencyResponse, 'frequencies'>>(
  response: T,
  seconds: number,
): T {
  const turns = response.frequencies.map((frequency) => 2 * Math.PI * frequency * seconds);
  return {
    ...response,
    re: response.re.map(
      (re, at) => re * Math.cos(turns[at] ?? 0) + (response.im[at] ?? 0) * Math.sin(turns[at] ?? 0),
    ),
    im: response.im.map(
      (im, at) => im * Math.cos(turns[at] ?? 0) - (response.re[at] ?? 0) * Math.sin(turns[at] ?? 0),
    ),
  };
}

/** A response in decibels and radians without jumps of a whole turn. */
export interface SizeAndPhase {
  readonly frequencies: readonly number[];
  /** A ratio. */
  readonly size: readonly number[];
  /** rad; the first from −π to π, or from −3π/2 to π/2 for what comes late. */
  readonly phase: readonly number[];
}

/** Each phase the nearest to the one before; the first is taken for late where it could be early by more than a quarter. */
export function sizeAndPhase({
  frequencies,
  re,
  im,
}: Along & Pick<FrequencyResponse, 'frequencies'>): SizeAndPhase {
  const turn = 2 * Math.PI;
  const phase: number[] = [];
  for (let at = 0; at < re.length; at += 1) {
    const own = Math.atan2(im[at] ?? 0, re[at] ?? 0);
    const before = phase.at(-1);
    if (before === undefined) phase.push(own > Math.PI / 2 ? own - turn : own);
    else phase.push(own + turn * Math.round((before - own) / turn));
  }
  return { frequencies, size: re.map((value, at) => Math.hypot(value, im[at] ?? 0)), phase };
}

/**
 * What an open loop is whose closed one, all of it fed back, answers so: L = T/(1 − T). A relative error of T becomes
 * 1/|1 − T| times that of L.
 * Source: block algebra, e.g. K. J. Åström and R. M. Murray, Feedback Systems, section 9.1.
 */
export function openOfClosed({ re, im }: Along): Along {
  const parts = re.map((value, at) => {
    const [a, b] = [value, im[at] ?? 0];
    const size = (1 - a) ** 2 + b ** 2;
    return { re: (a * (1 - a) - b * b) / size, im: b / size };
  });
  return { re: parts.map((one) => one.re), im: parts.map((one) => one.im) };
}
