import FastTransform from 'fft.js';
import type { Along } from './complex';

/** A transform of real numbers, of one length. */
export interface Fourier {
  readonly size: number;
  /** Bins 0 to size/2, real and imaginary parts in turn; written over by the next call. */
  readonly bins: (values: ArrayLike<number>) => ArrayLike<number>;
}

/**
 * The discrete Fourier transform X[k] = Σ x[n] e^(−2πikn/N) of real numbers, for one length N of 1 and more; what it
 * needs is made once and kept by whoever asks. Powers of two are quick, others take some four times as long.
 * Source: J. W. Cooley, J. W. Tukey, An algorithm for the machine calculation of complex Fourier series (1965); other
 * lengths by L. I. Bluestein, A linear filtering approach to the computation of discrete Fourier transform (1970).
 */
export function fourierOf(size: number): Fourier {
  if (!(Number.isInteger(size) && size >= 1)) throw new RangeError(`${size} values have no transform`);
  if (size === 1) return { size, bins: (values) => [values[0] ?? 0, 0] };
  return isPowerOfTwo(size) ? powerOfTwo(size) : chirped(size);
}

/** Bins 0 to N/2 of the transform of some numbers. */
export function transformed(values: ArrayLike<number>): Along {
  const bins = fourierOf(values.length).bins(values);
  const count = Math.floor(values.length / 2) + 1;
  const part = (which: number) => Array.from({ length: count }, (_, bin) => bins[2 * bin + which] ?? 0);
  return { re: part(0), im: part(1) };
}

/** The numbers that have these bins 0 to N/2: what `transformed` undoes. `size` tells an odd N from an even one. */
export function transformedBack({ re, im }: Along, size: number): readonly number[] {
  return Array.from({ length: size }, (_, at) => {
    let sum = re[0] ?? 0;
    for (let bin = 1; bin < re.length; bin += 1) {
      const turn = (2 * Math.PI * ((bin * at) % size)) / size;
      const times = 2 * bin === size ? 1 : 2;
      sum += times * ((re[bin] ?? 0) * Math.cos(turn) - (im[bin] ?? 0) * Math.sin(turn));
    }
    return sum / size;
  });
}

function isPowerOfTwo(size: number): boolean {
  return 2 ** Math.round(Math.log2(size)) === size;
}

function powerOfTwo(size: number): Fourier {
  const transform = new FastTransform(size);
  const room: number[] = transform.createComplexArray();
  const bins = (values: ArrayLike<number>) => {
    transform.realTransform(room, values);
    return room;
  };
  return { size, bins };
}

/** By kn = (k² + n² − (k − n)²)/2 a transform of any length is a convolution, done with one of a power of two. */
function chirped(size: number): Fourier {
  const longer = new FastTransform(2 ** Math.ceil(Math.log2(2 * size - 1)));
  const room = (): number[] => longer.createComplexArray().fill(0);
  const [given, spectrum, chirp, swept, back] = [room(), room(), room(), room(), room()];
  const turn = (at: number) => (Math.PI * ((at * at) % (2 * size))) / size;
  for (let at = 0; at < size; at += 1) {
    put(chirp, at, 1, 0, turn(at));
    if (at > 0) put(chirp, longer.size - at, 1, 0, turn(at));
  }
  longer.transform(swept, chirp);
  const bins = (values: ArrayLike<number>) => {
    given.fill(0);
    for (let at = 0; at < size; at += 1) put(given, at, values[at] ?? 0, 0, -turn(at));
    longer.transform(spectrum, given);
    for (let at = 0; at < 2 * longer.size; at += 2) {
      const [re, im, byRe, byIm] = [
        spectrum[at] ?? 0,
        spectrum[at + 1] ?? 0,
        swept[at] ?? 0,
        swept[at + 1] ?? 0,
      ];
      given[at] = re * byRe - im * byIm;
      given[at + 1] = re * byIm + im * byRe;
    }
    longer.inverseTransform(back, given);
    for (let at = 0; at < size; at += 1) put(back, at, back[2 * at] ?? 0, back[2 * at + 1] ?? 0, -turn(at));
    return back;
  };
  return { size, bins };
}

/** Writes re + i im, turned by an angle, to a place. */
function put(room: number[], at: number, re: number, im: number, angle: number): void {
  room[2 * at] = re * Math.cos(angle) - im * Math.sin(angle);
  room[2 * at + 1] = re * Math.sin(angle) + im * Math.cos(angle);
}
