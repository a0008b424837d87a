import { type Along, type Room, roomFor } from './complex';
import { byRate, type DigitalFilter } from './filter';

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
  return (filters, wait) => {
    const along = turnAlong(wait, frequencies);
    let at = 0;
    while (at < filters.length) {
      const filter = filters[at];
      // One that stands there again, as a notch for each motor, is computed once.
      let times = 1;
      while (at + times < filters.length && filters[at + times] === filter) times += 1;
      if (filter !== undefined) multiplyBy(along, filter, times, earlier(filter));
      at += times;
    }
    return along;
  };
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

/**
 * Multiplies by what a filter does, so many times. `earlier`: how the tones stand one sample earlier. This is `response`
 * written out for many tones: asked for each of them, it takes 1.4 times as long, and a sheet asks mostly here.
 */
function multiplyBy(along: Room, { b, a }: DigitalFilter, times: number, earlier: Along): void {
  const [b0, b1, b2] = b;
  const [a1, a2] = a;
  const { re, im } = along;
  for (let step = 0; step < re.length; step += 1) {
    const once = earlier.re[step] ?? 0;
    const onceIm = earlier.im[step] ?? 0;
    const twice = 2 * once * once - 1;
    const twiceIm = 2 * once * onceIm;
    const upRe = b0 + b1 * once + b2 * twice;
    const upIm = b1 * onceIm + b2 * twiceIm;
    const downRe = 1 + a1 * once + a2 * twice;
    const downIm = a1 * onceIm + a2 * twiceIm;
    const size = downRe * downRe + downIm * downIm;
    const doesRe = (upRe * downRe + upIm * downIm) / size;
    const doesIm = (upIm * downRe - upRe * downIm) / size;
    let allRe = re[step] ?? 0;
    let allIm = im[step] ?? 0;
    for (let time = 0; time < times; time += 1) {
      const turned = allRe * doesRe - allIm * doesIm;
      allIm = allRe * doesIm + allIm * doesRe;
      allRe = turned;
    }
    re[step] = allRe;
    im[step] = allIm;
  }
}
