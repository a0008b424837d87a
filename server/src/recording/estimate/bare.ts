import type { ShortSpectra } from './shaken';
import { quantile } from './span';
import { binsOf, type Track } from './tracks';

/** Whether something stands at a frequency (Hz) while no tone that moves is near; null: that was never so. */
export type Stands = (frequency: number) => boolean | null;

const inOneGo = 32;
/** What stands, stands so many dB over what lies about it. */
const leastStanding = 2;
const bareSegments = 8;

/**
 * Tones that any motor may have, be they loud enough to be found or not: of its shaft, of two blades and of three, and of
 * those as often again.
 */
const usualOrders = [1, 2, 3, 4];

/**
 * Whether something stands at a frequency in the segments in which no tone that moves is near. What stands is there in
 * each of them, so that their logarithms are averaged: a few loud ones say little.
 */
export function* standsWithout(
  spectra: ShortSpectra,
  tracks: readonly Track[],
  orders: readonly number[],
): Generator<void, Stands> {
  const bins = spectra.frequencies.length;
  const [sums, counts] = [new Float64Array(bins), new Float64Array(bins)];
  const isBare = new Uint8Array(bins);
  const all = [...new Set([...usualOrders, ...orders])];
  for (let first = 0; first < tracks.length; ) {
    const at = tracks[first]?.at ?? 0;
    if (at % inOneGo === 0) yield;
    isBare.fill(1);
    // Those of a segment follow each other.
    for (; first < tracks.length && tracks[first]?.at === at; first += 1)
      for (const order of all) {
        const { from, to } = binsOf(spectra, tracks[first] as Track, order);
        isBare.fill(0, from, to + 1);
      }
    const row = spectra.over.subarray(at * bins, (at + 1) * bins);
    if (Number.isNaN(row[0] ?? Number.NaN)) continue;
    for (let bin = 0; bin < bins; bin += 1) {
      if (isBare[bin] === 0) continue;
      sums[bin] = (sums[bin] as number) + Math.log(Math.max(row[bin] as number, 1e-9));
      counts[bin] = (counts[bin] as number) + 1;
    }
  }
  const levels = sums.map((sum, bin) => (10 * Math.LOG10E * sum) / (counts[bin] as number));
  return (frequency) => {
    const bin = Math.round((frequency * spectra.setup.segment) / spectra.setup.rate);
    const tops = [bin - 1, bin, bin + 1].filter((one) => (counts[one] ?? 0) >= bareSegments);
    if (tops.length === 0) return null;
    const floor = floorAbout(levels, counts, bin);
    return tops.some((one) => {
      const independent = 1 + ((counts[one] ?? 0) - 1) * apart;
      const chance = (sure * scatter) / Math.sqrt(independent);
      const isSlope = [one - 2, one - 1, one + 1, one + 2].some(
        (near) => (counts[near] ?? 0) >= bareSegments && (levels[near] ?? 0) > (levels[one] ?? 0),
      );
      return !isSlope && (levels[one] ?? 0) - floor >= Math.max(leastStanding, chance);
    });
  };
}

/**
 * Deviation of the decibels of one segment's noise: its power is spread exponentially, and the logarithm of that by
 * π/√6 (Abramowitz and Stegun, Handbook of Mathematical Functions, 26.1.30: extreme values).
 */
const scatter = (10 * Math.LOG10E * Math.PI) / Math.sqrt(6);
/** Of segments that overlap by half, so many tell something of their own. */
const apart = 0.7;
/** So many deviations chance hardly reaches in one of three bins. */
const sure = 3;

/** The median of the levels about a bin, dB. */
function floorAbout(levels: Float64Array, counts: Float64Array, middle: number): number {
  const reach = Math.max(6, Math.round(0.25 * middle));
  const about = [...levels.keys()].filter(
    (bin) => bin > 0 && Math.abs(bin - middle) <= reach && (counts[bin] ?? 0) >= bareSegments,
  );
  return quantile(
    about.map((bin) => levels[bin] ?? 0),
    0.5,
  );
}
