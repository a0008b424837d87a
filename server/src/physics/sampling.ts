/**
 * Half the sampling rate, Hz: the highest frequency that samples can tell from a lower one.
 * Source: the sampling theorem, any textbook on signal processing (Nyquist 1928, Shannon 1949).
 */
export function halfRate(rate: number): number {
  return rate / 2;
}

/**
 * The frequency (Hz, between 0 and half the rate) as which a tone shows up in samples taken at `rate` Hz:
 * |tone − rate × round(tone / rate)|. Domain: rate above 0.
 * Source: any textbook on signal processing, e.g. Oppenheim and Schafer, Discrete-Time Signal Processing,
 * chapter 4 (from memory).
 */
export function alias(tone: number, rate: number): number {
  return Math.abs(tone - rate * Math.round(tone / rate));
}

/**
 * How many times `part` goes into `whole`, when it goes in evenly (to a hundredth of a per cent); else null.
 * Domain: both above 0.
 */
export function evenDivision(whole: number, part: number): number | null {
  const times = Math.round(whole / part);
  return times >= 1 && Math.abs(whole / part - times) <= 1e-4 * times ? times : null;
}
