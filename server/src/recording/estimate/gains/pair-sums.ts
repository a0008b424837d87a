import type { CrossSpectra } from '../../../physics/cross-spectrum';

/** Cross spectra of each two signals, summed over segments. */
export interface PairSums {
  readonly count: number;
  readonly frequencies: Float64Array;
  readonly segments: number;
  /** Pairs one after the other, each with a value for each bin. */
  readonly parts: { readonly re: Float64Array; readonly im: Float64Array };
}

/** What is between two signals in a bin. */
export function pairAt({ count, frequencies, parts }: PairSums, one: number, other: number, bin: number) {
  const place = (one * count + other) * frequencies.length + bin;
  return { re: parts.re[place] ?? 0, im: parts.im[place] ?? 0 };
}

export function pairSums(spectra: CrossSpectra): PairSums {
  const { count, frequencies, segments } = spectra;
  const bins = frequencies.length;
  const parts = {
    re: new Float64Array(count * count * bins),
    im: new Float64Array(count * count * bins),
  };
  for (let one = 0; one < count; one += 1)
    for (let other = 0; other < count; other += 1) {
      const { re, im } = spectra.between(one, other);
      const place = (one * count + other) * bins;
      for (let bin = 0; bin < bins; bin += 1) {
        parts.re[place + bin] = segments * (re[bin] ?? 0);
        parts.im[place + bin] = segments * (im[bin] ?? 0);
      }
    }
  return { count, frequencies, segments, parts };
}

/** Sums with those of more segments, or without them. */
export function withMore(all: PairSums, more: PairSums, sign: 1 | -1): PairSums {
  const together = (of: (sums: PairSums) => Float64Array) =>
    of(all).map((value, place) => value + sign * (of(more)[place] ?? 0));
  return {
    ...all,
    segments: all.segments + sign * more.segments,
    parts: { re: together(({ parts }) => parts.re), im: together(({ parts }) => parts.im) },
  };
}
