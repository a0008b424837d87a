import type { SizeAndPhase } from './frequency-response';

/** Where a curve's size first falls below a level, Hz; null where it never does, or begins below. */
export function fallsBelow({ frequencies, size }: SizeAndPhase, level: number): number | null {
  return firstCrossing(frequencies, size, (value) => Math.log(Math.max(value, 1e-12) / level));
}

/** Where its phase first falls below so many rad, Hz; null where it never does, or begins below. */
export function reachesPhase({ frequencies, phase }: SizeAndPhase, least: number): number | null {
  return firstCrossing(frequencies, phase, (value) => value - least);
}

/** Between two points as they go evenly along the logarithm of the frequency. */
function firstCrossing(
  frequencies: readonly number[],
  values: readonly number[],
  above: (value: number) => number,
): number | null {
  for (let at = 0; at < values.length; at += 1) {
    const [before, own] = [above(values[at - 1] ?? Number.NaN), above(values[at] ?? Number.NaN)];
    if (!(own < 0)) continue;
    if (!(before >= 0)) return null;
    const share = before / (before - own);
    const [from, to] = [frequencies[at - 1] ?? 0, frequencies[at] ?? 0];
    return from > 0 ? from * (to / from) ** share : share * to;
  }
  return null;
}

/** The most that comes of what goes in, and where, Hz: by a parabola through the highest point and its neighbours. */
export function resonanceOf({ frequencies, size }: SizeAndPhase): {
  readonly size: number;
  readonly frequency: number;
} {
  const at = size.reduce((best, value, index) => (value > (size[best] ?? 0) ? index : best), 0);
  const [left, own, right] = [size[at - 1], size[at] ?? 0, size[at + 1]];
  const frequency = frequencies[at] ?? 0;
  if (left === undefined || right === undefined) return { size: own, frequency };
  const bend = left - 2 * own + right;
  const off = bend < 0 ? (left - right) / (2 * bend) : 0;
  const step = off > 0 ? (frequencies[at + 1] ?? 0) - frequency : frequency - (frequencies[at - 1] ?? 0);
  return { size: own - (off * (left - right)) / 4, frequency: frequency + off * step };
}

/**
 * How much later an answer comes for each hertz beyond the frequency where it comes half a turn late, as a wait, s:
 * (−φ(2 f180) − π) / (2π · 2 f180); null where the curve does not reach twice that frequency.
 * Source: the phase delay of ADS-33, as J. A. Ham, C. K. Gardner, M. B. Tischler, Flight testing and frequency domain
 * analysis for rotorcraft handling qualities characteristics, use it (the formula from memory).
 */
export function phaseDelayOf(curve: SizeAndPhase): number | null {
  const half = reachesPhase(curve, -Math.PI);
  const late = half === null ? null : phaseBetween(curve, 2 * half);
  return half === null || late === null ? null : (-late - Math.PI) / (4 * Math.PI * half);
}

/** The phase at a frequency, rad; null outside the curve. */
export function phaseBetween({ frequencies, phase }: SizeAndPhase, frequency: number): number | null {
  const after = frequencies.findIndex((one) => one >= frequency);
  if (after < 1) return frequencies[after] === frequency ? (phase[after] ?? null) : null;
  const [from, to] = [frequencies[after - 1] ?? 0, frequencies[after] ?? 0];
  const share = (frequency - from) / (to - from);
  return (phase[after - 1] ?? 0) * (1 - share) + share * (phase[after] ?? 0);
}
