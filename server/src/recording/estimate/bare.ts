import type { ShortSpectra } from './shaken';
import { quantile } from './span';
import { binsOf, type Track } from './tracks';

/** Whether something stands at a frequency (Hz) while no tone that moves is near; null: that was never so. */
export type Stands = (frequency: number) => boolean | null;

const inOneGo = 32;
/** What stands, stands so many dB over what lies about it. */
const leastStanding = 2;
const bareSegments = 8;

/** Whether something stands at a frequency in the segments in which no tone that moves is near. */
export function* standsWithout(
  spectra: ShortSpectra,
  tracks: readonly Track[],
  orders: readonly number[],
): Generator<void, Stands> {
  const bins = spectra.frequencies.length;
  const [sums, counts] = [new Float64Array(bins), new Float64Array(bins)];
  const isBare = new Uint8Array(bins);
  for (let first = 0; first < tracks.length; ) {
    const at = tracks[first]?.at ?? 0;
    if (at % inOneGo === 0) yield;
    isBare.fill(1);
    // Those of a segment follow each other.
    for (; first < tracks.length && tracks[first]?.at === at; first += 1)
      for (const order of orders) {
        const { from, to } = binsOf(spectra, tracks[first] as Track, order);
        isBare.fill(0, from, to + 1);
      }
    const row = spectra.over.subarray(at * bins, (at + 1) * bins);
    if (Number.isNaN(row[0] ?? Number.NaN)) continue;
    for (let bin = 0; bin < bins; bin += 1) {
      if (isBare[bin] === 0) continue;
      sums[bin] = (sums[bin] as number) + (row[bin] as number);
      counts[bin] = (counts[bin] as number) + 1;
    }
  }
  const means = sums.map((sum, bin) => sum / (counts[bin] as number));
  return (frequency) => {
    const bin = Math.round((frequency * spectra.setup.segment) / spectra.setup.rate);
    const tops = [bin - 1, bin, bin + 1].filter((one) => (counts[one] ?? 0) >= bareSegments);
    return tops.length === 0 ? null : overFloor(means, counts, tops) >= leastStanding;
  };
}

/** dB of the highest of some bins over the median of those about them. */
function overFloor(means: Float64Array, counts: Float64Array, tops: readonly number[]): number {
  const middle = tops[0] ?? 0;
  const reach = Math.max(6, Math.round(0.25 * middle));
  const about = [...means.keys()].filter(
    (bin) => bin > 0 && Math.abs(bin - middle) <= reach && (counts[bin] ?? 0) >= bareSegments,
  );
  const floor = quantile(
    about.map((bin) => means[bin] ?? 0),
    0.5,
  );
  return 10 * Math.log10(Math.max(...tops.map((bin) => means[bin] ?? 0)) / floor);
}
