import { alias, halfRate } from '../../../physics/sampling';
import { quantile } from '../span';
import type { ShortSpectra } from './shaken';
import { binsOf, rowAt, type Track } from './tracks';

/** A tone of the mean spectrum: Hz, and dB over what lies about it. */
export interface StandingTone {
  readonly frequency: number;
  readonly width: number;
  readonly above: number;
}

/** Whether a tone stands; null: nobody can say. */
export type Stands = (tone: StandingTone) => boolean | null;

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
 * each of them, so that their logarithms are averaged: a few loud ones say little. Where there are no such segments, it
 * stands if no motor was there so much more often than beside it as the tone is louder.
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
    const row = rowAt(spectra, at);
    if (Number.isNaN(row[0] ?? Number.NaN)) continue;
    for (let bin = 0; bin < bins; bin += 1) {
      if (isBare[bin] === 0) continue;
      sums[bin] = (sums[bin] as number) + Math.log(Math.max(row[bin] as number, 1e-9));
      counts[bin] = (counts[bin] as number) + 1;
    }
  }
  const levels = sums.map((sum, bin) => (10 * Math.LOG10E * sum) / (counts[bin] as number));
  return (tone) => {
    const { frequency } = tone;
    const bin = Math.round((frequency * spectra.setup.segment) / spectra.setup.rate);
    const tops = [bin - 1, bin, bin + 1].filter((one) => (counts[one] ?? 0) >= bareSegments);
    if (tops.length === 0) return isMadeByStaying(tone, tracks, all, spectra.setup.rate) ? null : true;
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

/** Of how much louder a tone is, a third counts: motors are louder at some speeds than at others. Ours. */
const slack = 3;

/** Whether a tone that moves may make one that seems to stand, by being there far more often than beside it. */
function isMadeByStaying(
  { frequency, width, above }: StandingTone,
  tracks: readonly Track[],
  orders: readonly number[],
  rate: number,
): boolean {
  const half = width / 2 + 2;
  const within = (from: number, to: number) => Math.max(0, Math.min(halfRate(rate), to) - Math.max(0, from));
  const beside =
    within(frequency - 4.5 * half, frequency - 1.5 * half) +
    within(frequency + 1.5 * half, frequency + 4.5 * half);
  if (beside < half) return true;
  const motors = [...new Set(tracks.map(({ motor }) => motor))];
  return motors.some((motor) =>
    orders.some((order) => {
      let [here, there] = [0, 0];
      for (const track of tracks) {
        if (track.motor !== motor) continue;
        const off = Math.abs(alias(order * track.turns, rate) - frequency);
        if (off <= half) here += 1;
        else if (off >= 1.5 * half && off <= 4.5 * half) there += 1;
      }
      const density = here / (2 * half) / Math.max(there / beside, 0.5 / beside);
      return here > 0 && density >= 10 ** (above / 10) / slack;
    }),
  );
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
