import { type Along, type Room, roomFor } from './complex';
import { byRate, type DigitalFilter, folded } from './filter';

/**
 * What filters one after the other and a wait (s) make of tones (Hz): `chainResponse` at each of them, times the
 * wait's turn, in plain numbers.
 * Source: the filters' own; proved against SciPy's freqz and against `chainResponse`.
 */
export function alongFrequencies(
  filters: readonly DigitalFilter[],
  wait: number,
  frequencies: readonly number[],
): Along {
  return respondingAlong(frequencies)(filters, wait);
}

/** The same of filters after filters, for which what tones make of a sample’s wait is computed once. */
export function respondingAlong(
  frequencies: readonly number[],
): (filters: readonly DigitalFilter[], wait: number) => Along {
  const earlier = byRate((rate) => turnAlong(1 / rate, frequencies));
  return (filters, wait) =>
    folded(
      { filters },
      turnAlong(wait, frequencies),
      (filter) => responseAlong(filter, earlier(filter)),
      multiplied,
    );
}

/** How tones stand that come later by a wait, s. */
function turnAlong(wait: number, frequencies: readonly number[]): Room {
  const along = roomFor(frequencies);
  if (wait === 0) return { re: along.re.fill(1), im: along.im.fill(0) };
  for (let step = 0; step < frequencies.length; step += 1) {
    const angle = -2 * Math.PI * (frequencies[step] ?? 0) * wait;
    along.re[step] = Math.cos(angle);
    along.im[step] = Math.sin(angle);
  }
  return along;
}

/** `earlier`: how the tones stand one sample earlier. */
function responseAlong({ b, a }: DigitalFilter, earlier: Along): Room {
  const along = roomFor(earlier.re);
  for (let step = 0; step < earlier.re.length; step += 1) {
    const once = earlier.re[step] ?? 0;
    const onceIm = earlier.im[step] ?? 0;
    const twice = 2 * once * once - 1;
    const twiceIm = 2 * once * onceIm;
    const upRe = b[0] + b[1] * once + b[2] * twice;
    const upIm = b[1] * onceIm + b[2] * twiceIm;
    const downRe = 1 + a[0] * once + a[1] * twice;
    const downIm = a[0] * onceIm + a[1] * twiceIm;
    const size = downRe * downRe + downIm * downIm;
    along.re[step] = (upRe * downRe + upIm * downIm) / size;
    along.im[step] = (upIm * downRe - upRe * downIm) / size;
  }
  return along;
}

/** The first, with the other taken into it. */
function multiplied({ re, im }: Room, other: Along): Room {
  for (let step = 0; step < re.length; step += 1) {
    const oneRe = re[step] ?? 0;
    const oneIm = im[step] ?? 0;
    const otherRe = other.re[step] ?? 0;
    const otherIm = other.im[step] ?? 0;
    re[step] = oneRe * otherRe - oneIm * otherIm;
    im[step] = oneRe * otherIm + oneIm * otherRe;
  }
  return { re, im };
}
