/** Coefficients of the cosines of a window, a0 − a1 cos + a2 cos … of one turn, two turns, … over its length. */
const cosines = {
  rectangular: [1],
  hann: [0.5, 0.5],
  hamming: [0.54, 0.46],
  blackman: [0.42, 0.5, 0.08],
  'blackman-harris': [0.358_75, 0.488_29, 0.141_28, 0.011_68],
  'flat top': [0.215_578_95, 0.416_631_58, 0.277_263_158, 0.083_578_947, 0.006_947_368],
} as const;

/** Those that no sum of cosines makes, of the place from −1 to 1. */
const shapes = {
  bartlett: (place: number) => 1 - Math.abs(place),
  welch: (place: number) => 1 - place ** 2,
} as const;

export type WindowName = keyof typeof cosines | keyof typeof shapes;

/**
 * A window of so many samples in the form for spectra: as if it went on with its first sample.
 * Source: F. J. Harris, On the use of windows for harmonic analysis with the discrete Fourier transform (1978).
 */
export function windowOf(name: WindowName, size: number): Float64Array {
  return Float64Array.from({ length: size }, (_, at) => {
    if (name === 'bartlett' || name === 'welch') return shapes[name]((2 * at) / size - 1);
    const sum: readonly number[] = cosines[name];
    return sum.reduce(
      (all, part, turns) => all + (-1) ** turns * part * Math.cos((2 * Math.PI * turns * at) / size),
      0,
    );
  });
}

/** What a window leaves of the amplitude of a tone in the middle of a bin: its mean. Source: as above. */
export function coherentGain(window: Float64Array): number {
  return sumOf(window, (value) => value) / window.length;
}

/** How many bins wide a rectangle lets as much noise through as a window: N Σw² / (Σw)². Source: as above. */
export function noiseBandwidth(window: Float64Array): number {
  return (window.length * sumOf(window, (value) => value ** 2)) / sumOf(window, (value) => value) ** 2;
}

/** How alike a window is to itself when moved by a number of samples, from 0 to 1: Σ w[n] w[n+m] / Σ w². */
export function windowOverlap(window: Float64Array, moved: number): number {
  return (
    sumOf(window.subarray(moved), (value, at) => value * (window[at] ?? 0)) /
    sumOf(window, (value) => value ** 2)
  );
}

/** What a window leaves of a tone that lies so many bins off, beside one in the middle of its bin; a ratio. */
export function windowGain(window: Float64Array, bins: number): number {
  let [re, im] = [0, 0];
  for (const [at, value] of window.entries()) {
    const turn = (2 * Math.PI * bins * at) / window.length;
    re += value * Math.cos(turn);
    im += value * Math.sin(turn);
  }
  return Math.sqrt(re * re + im * im) / sumOf(window, (value) => value);
}

function sumOf(values: Float64Array, of: (value: number, at: number) => number): number {
  return values.reduce((sum, value, at) => sum + of(value, at), 0);
}
