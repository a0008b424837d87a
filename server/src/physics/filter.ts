import { angle, type Complex, magnitude, unit } from './complex';

/**
 * A digital filter of at most second order, at `rate` samples a second:
 * y = b0 x + b1 x' + b2 x'' − a1 y' − a2 y'', where each dash is one sample earlier.
 */
export interface DigitalFilter {
  readonly rate: number;
  readonly b: readonly [number, number, number];
  readonly a: readonly [number, number];
}

/** The filter that changes nothing. */
export function passThrough(rate: number): DigitalFilter {
  return { rate, b: [1, 0, 0], a: [0, 0] };
}

/**
 * A first-order low-pass, −3 dB at the cutoff (Hz), at a sampling rate (Hz): the bilinear transform of
 * 1 / (1 + s/ωc) with the cutoff held in place. Domain: cutoff between 0 and half the rate; throws outside.
 * Source: any textbook on signal processing; coefficients proved against SciPy's Butterworth of order 1.
 */
export function firstOrderLowpass(cutoff: number, rate: number): DigitalFilter {
  const warped = warpedCutoff(cutoff, rate);
  const gain = warped / (1 + warped);
  return { rate, b: [gain, gain, 0], a: [(warped - 1) / (warped + 1), 0] };
}

/**
 * A second-order Butterworth low-pass, −3 dB at the cutoff (Hz): the low-pass of the cookbook at a quality of
 * 1/√2. Domain: cutoff between 0 and half the rate; throws outside.
 * Source: R. Bristow-Johnson, Audio EQ Cookbook (W3C Group Note, 2021), "LPF".
 */
export function butterworthLowpass(cutoff: number, rate: number): DigitalFilter {
  return lowpass(cutoff, Math.SQRT1_2, rate);
}

/** A second-order low-pass of any quality; see `butterworthLowpass`. */
export function lowpass(cutoff: number, quality: number, rate: number): DigitalFilter {
  warpedCutoff(cutoff, rate);
  const turn = (2 * Math.PI * cutoff) / rate;
  const alpha = Math.sin(turn) / (2 * quality);
  const cosine = Math.cos(turn);
  const b1 = (1 - cosine) / (1 + alpha);
  return { rate, b: [b1 / 2, b1, b1 / 2], a: [(-2 * cosine) / (1 + alpha), (1 - alpha) / (1 + alpha)] };
}

/**
 * A notch with its centre and the width between its −3 dB points, both in Hz and both held in place.
 * Domain: centre below half the rate, width above 0 and below half the rate; throws outside.
 * Source: S. Orfanidis, Introduction to Signal Processing (1996), as SciPy's `iirnotch` has it.
 */
export function notch(centre: number, width: number, rate: number): DigitalFilter {
  warpedCutoff(centre, rate);
  const half = warpedCutoff(width, rate);
  const gain = 1 / (1 + half);
  const cosine = Math.cos((2 * Math.PI * centre) / rate);
  return { rate, b: [gain, -2 * gain * cosine, gain], a: [-2 * gain * cosine, 2 * gain - 1] };
}

/** Where a filter takes one tone out and leaves the rest, and how wide; Hz. Null for one that is no notch. */
export function notchPlace({
  rate,
  b: [first, middle, last],
  a: [, twice],
}: DigitalFilter): { readonly centre: number; readonly width: number } | null {
  const cosine = -middle / (2 * first);
  if (first === 0 || first !== last || !(Math.abs(cosine) < 1)) return null;
  return {
    centre: (rate * Math.acos(cosine)) / (2 * Math.PI),
    width: (rate / Math.PI) * Math.atan((1 - twice) / (1 + twice)),
  };
}

/** Which low-pass a filter is: its order, and its corner in Hz. Domain: what the two functions above make. */
export function lowpassCorner({ rate, b: [, , last], a: [one, two] }: DigitalFilter): {
  readonly order: 'first' | 'second';
  readonly cutoff: number;
} {
  if (last === 0) return { order: 'first', cutoff: (rate / Math.PI) * Math.atan((1 + one) / (1 - one)) };
  const cosine = -one / (1 + two);
  return { order: 'second', cutoff: (rate * Math.acos(cosine)) / (2 * Math.PI) };
}

/** tan(π f / rate), after looking at the domain. */
function warpedCutoff(frequency: number, rate: number): number {
  if (!(frequency > 0 && frequency < rate / 2))
    throw new RangeError(`${frequency} Hz does not lie between 0 and half of ${rate} Hz`);
  return Math.tan((Math.PI * frequency) / rate);
}

/** What the filter makes of a tone (Hz): its gain as size, its shift as angle. */
export function response(filter: DigitalFilter, frequency: number): Complex {
  const { re, im } = earlierBy(1, filter.rate, frequency);
  return responseTo(filter, re, im);
}

/** How a tone (Hz) stands so many samples earlier. */
function earlierBy(samples: number, rate: number, frequency: number): Complex {
  return unit((samples * (-2 * Math.PI * frequency)) / rate);
}

/** `once`: how the tone stands one sample earlier, by its parts. In plain numbers, for a sheet asks thousands of times. */
function responseTo({ b, a }: DigitalFilter, once: number, onceIm: number): Complex {
  const twice = 2 * once * once - 1;
  const twiceIm = 2 * once * onceIm;
  const upRe = b[0] + b[1] * once + b[2] * twice;
  const upIm = b[1] * onceIm + b[2] * twiceIm;
  const downRe = 1 + a[0] * once + a[1] * twice;
  const downIm = a[0] * onceIm + a[1] * twiceIm;
  const size = downRe * downRe + downIm * downIm;
  return { re: (upRe * downRe + upIm * downIm) / size, im: (upIm * downRe - upRe * downIm) / size };
}

/** Gain at a tone (Hz) as a ratio. */
export function gainAt(filter: DigitalFilter, frequency: number): number {
  return magnitude(response(filter, frequency));
}

/** Phase at a tone (Hz) in rad; negative: the tone comes out late. */
export function phaseAt(filter: DigitalFilter, frequency: number): number {
  return angle(response(filter, frequency));
}

/** Below this the numerator counts as nothing: a tone at the centre of a notch has no delay of its own. */
const nothing = 1e-12;

/**
 * Group delay at a tone (Hz) in seconds: how late the envelope of a signal about there comes out.
 * Computed from the derivatives of numerator and denominator: Re(Σ k bₖ zᵏ / Σ bₖ zᵏ) − the same of a.
 * Source: J. O. Smith, Introduction to Digital Filters, "Numerical computation of group delay".
 */
export function groupDelay(filter: DigitalFilter, frequency: number): number {
  return delayOf(filter, earlierBy(1, filter.rate, frequency), earlierBy(2, filter.rate, frequency));
}

function delayOf({ rate, b, a }: DigitalFilter, once: Complex, twice: Complex): number {
  return (
    (ratioOfDerivative(b[0], b[1], b[2], once, twice) - ratioOfDerivative(1, a[0], a[1], once, twice)) / rate
  );
}

/** Of a polynomial of second order in z on the circle: the real part of z times its derivative over itself. */
function ratioOfDerivative(
  zeroth: number,
  first: number,
  second: number,
  z: Complex,
  square: Complex,
): number {
  const [once, onceIm] = [first * z.re, first * z.im];
  const [twice, twiceIm] = [second * square.re, second * square.im];
  const [re, im] = [zeroth + once + twice, onceIm + twiceIm];
  const size = re * re + im * im;
  // At a zero on the circle the numerator is symmetrical: half its length, one sample, is its delay.
  if (size < nothing * nothing) return 1;
  return ((once + 2 * twice) * re + (onceIm + 2 * twiceIm) * im) / size;
}

/** Filters one after the other. Their gains multiply, phases and delays add up. */
export interface Chain {
  readonly filters: readonly DigitalFilter[];
}

/** What the whole chain makes of a tone (Hz): multiplied in plain numbers, for a sheet asks hundreds of times. */
export function chainResponse({ filters }: Chain, frequency: number): Complex {
  let re = 1;
  let im = 0;
  let before: DigitalFilter | undefined;
  let once = 1;
  let onceIm = 0;
  let doesRe = 1;
  let doesIm = 0;
  for (const filter of filters) {
    if (filter !== before) {
      if (filter.rate !== before?.rate) {
        const earlier = earlierBy(1, filter.rate, frequency);
        once = earlier.re;
        onceIm = earlier.im;
      }
      const does = responseTo(filter, once, onceIm);
      doesRe = does.re;
      doesIm = does.im;
      before = filter;
    }
    const turned = re * doesRe - im * doesIm;
    im = re * doesIm + im * doesRe;
    re = turned;
  }
  return { re, im };
}

export function chainGain(chain: Chain, frequency: number): number {
  return magnitude(chainResponse(chain, frequency));
}

/** In rad, without a jump of a whole turn between the filters. */
export function chainPhase(chain: Chain, frequency: number): number {
  const respond = responding(frequency);
  return folded(
    chain,
    0,
    (filter) => angle(respond(filter)),
    (all, phase) => all + phase,
  );
}

export function chainDelay(chain: Chain, frequency: number): number {
  const once = byRate((rate) => earlierBy(1, rate, frequency));
  const twice = byRate((rate) => earlierBy(2, rate, frequency));
  return folded(
    chain,
    0,
    (filter) => delayOf(filter, once(filter), twice(filter)),
    (all, delay) => all + delay,
  );
}

/** What filters make of a tone (Hz), one by one. */
function responding(frequency: number): (filter: DigitalFilter) => Complex {
  const earlier = byRate((rate) => earlierBy(1, rate, frequency));
  return (filter) => {
    const { re, im } = earlier(filter);
    return responseTo(filter, re, im);
  };
}

/** What filters see that hangs on how often they work: asked once for those that work equally often. */
export function byRate<T>(ask: (rate: number) => T): (filter: DigitalFilter) => T {
  let known: { readonly rate: number; readonly seen: T } | undefined;
  return ({ rate }) => {
    known = known?.rate === rate ? known : { rate, seen: ask(rate) };
    return known.seen;
  };
}

/** Puts together what each filter does. One that stands there again, as a notch for each motor, is asked once. */
export function folded<T>(
  { filters }: Chain,
  start: T,
  ask: (filter: DigitalFilter) => T,
  together: (all: T, one: T) => T,
): T {
  let all = start;
  let known: { readonly filter: DigitalFilter; readonly does: T } | undefined;
  for (const filter of filters) {
    known = known?.filter === filter ? known : { filter, does: ask(filter) };
    all = together(all, known.does);
  }
  return all;
}
