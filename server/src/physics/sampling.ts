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
 * The lowest and the highest frequency (Hz) as which a tone that lies somewhere in a span shows up in samples taken
 * at `rate` Hz. Domain: rate above 0, low up to high.
 */
export function aliasSpan(
  low: number,
  high: number,
  rate: number,
): { readonly low: number; readonly high: number } {
  const ends = [alias(low, rate), alias(high, rate)];
  // What runs past a multiple of the rate comes down to nothing on its way, past the middle of two up to half of it.
  const passes = (offset: number) => Math.floor(high / rate - offset) >= Math.ceil(low / rate - offset);
  return {
    low: passes(0) ? 0 : Math.min(...ends),
    high: passes(0.5) ? halfRate(rate) : Math.max(...ends),
  };
}

/**
 * How many times `part` goes into `whole`, when it goes in evenly (to a hundredth of a per cent); else null.
 * Domain: both above 0.
 */
export function evenDivision(whole: number, part: number): number | null {
  const times = Math.round(whole / part);
  return times >= 1 && Math.abs(whole / part - times) <= 1e-4 * times ? times : null;
}
