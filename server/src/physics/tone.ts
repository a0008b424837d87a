/** Where a tone lies, in bins from the middle one, and by what its amplitude in the middle bin falls short. */
export interface ToneBetween {
  readonly offset: number;
  /** The amplitude is that of the middle bin times this. */
  readonly scale: number;
}

/**
 * A tone between the bins of a Hann window, from the amplitudes of its highest bin and its two neighbours: with the
 * ratio r of the two highest d = (2r − 1)/(r + 1), the amplitude times πd(1 − d²)/sin πd. Exact for a tone alone.
 * Source: the transform of the Hann window, e.g. V. K. Jain, W. L. Collins, D. C. Davis, High-accuracy analog
 * measurements via interpolated FFT (1979; from memory).
 */
export function toneBetween(before: number, middle: number, after: number): ToneBetween {
  const ratio = Math.max(before, after) / middle;
  const size = middle > 0 ? Math.min(0.5, Math.max(0, (2 * ratio - 1) / (ratio + 1))) : 0;
  const scale = size === 0 ? 1 : (Math.PI * size * (1 - size ** 2)) / Math.sin(Math.PI * size);
  return { offset: after >= before ? size : -size, scale };
}

/**
 * Decibels by which a tone (Hz) stands over the noise that rows make of it whose times are off by a standard deviation
 * (s): −20 log(2πfσ).
 * Source: jitter of a clock, e.g. W. Kester, Analog Devices tutorial MT-007 (from memory).
 */
export function overJitter(tone: number, deviation: number): number {
  return -20 * Math.log10(2 * Math.PI * tone * deviation);
}
