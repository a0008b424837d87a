import type { DigitalFilter } from './filter';

/** Complex numbers along frequencies, by their parts. */
export interface Along {
  readonly re: readonly number[];
  readonly im: readonly number[];
}

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
  let all = waitAlong(wait, frequencies);
  let before: { readonly filter: DigitalFilter; readonly does: Along } | null = null;
  for (const filter of filters) {
    // One that stands there again, as a notch for each motor, is asked once.
    const does: Along = before?.filter === filter ? before.does : responseAlong(filter, frequencies);
    before = { filter, does };
    all = product(all, does);
  }
  return all;
}

function waitAlong(wait: number, frequencies: readonly number[]): Along {
  const re: number[] = [];
  const im: number[] = [];
  for (const frequency of frequencies) {
    const angle = -2 * Math.PI * frequency * wait;
    re.push(Math.cos(angle));
    im.push(Math.sin(angle));
  }
  return { re, im };
}

function responseAlong({ rate, b, a }: DigitalFilter, frequencies: readonly number[]): Along {
  const re: number[] = [];
  const im: number[] = [];
  for (const frequency of frequencies) {
    const angle = (-2 * Math.PI * frequency) / rate;
    const once = Math.cos(angle);
    const onceIm = Math.sin(angle);
    const twice = 2 * once * once - 1;
    const twiceIm = 2 * once * onceIm;
    const upRe = b[0] + b[1] * once + b[2] * twice;
    const upIm = b[1] * onceIm + b[2] * twiceIm;
    const downRe = 1 + a[0] * once + a[1] * twice;
    const downIm = a[0] * onceIm + a[1] * twiceIm;
    const size = downRe * downRe + downIm * downIm;
    re.push((upRe * downRe + upIm * downIm) / size);
    im.push((upIm * downRe - upRe * downIm) / size);
  }
  return { re, im };
}

function product(one: Along, other: Along): Along {
  const re: number[] = [];
  const im: number[] = [];
  for (let step = 0; step < one.re.length; step += 1) {
    const oneRe = one.re[step] ?? 0;
    const oneIm = one.im[step] ?? 0;
    const otherRe = other.re[step] ?? 0;
    const otherIm = other.im[step] ?? 0;
    re.push(oneRe * otherRe - oneIm * otherIm);
    im.push(oneRe * otherIm + oneIm * otherRe);
  }
  return { re, im };
}
