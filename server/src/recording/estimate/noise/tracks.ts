import { alias } from '../../../physics/sampling';
import { type FlightRows, meanBetween } from '../flight-rows';
import { quantile } from '../span';
import { lowestShaking, type ShortSpectra } from './shaken';

/** How one motor turned in a segment. */
export interface Track {
  /** Of the segment. */
  readonly at: number;
  readonly motor: number;
  /** Mean turns a second, Hz, and their deviation as a share of it. */
  readonly turns: number;
  readonly spread: number;
}

/** Orders that are looked at, by equal factors: from half a turn to the third tone of three blades. */
const orders = { from: 0.5, to: 9.5 };
/** Of their logarithm. */
export const orderStep = 0.004;
const orderCount = Math.ceil(Math.log(orders.to / orders.from) / orderStep);

export function orderOf(place: number): number {
  return orders.from * Math.exp(orderStep * place);
}

/** The place of an order, the inverse of that. */
export function placeOf(order: number): number {
  return Math.round(Math.log(order / orders.from) / orderStep);
}

/** Segments that are looked at, evenly over the flight. */
const mostLooked = 800;
const inOneGo = 16;

export function* tracksOf(
  rows: FlightRows,
  { starts, setup }: ShortSpectra,
): Generator<void, readonly Track[]> {
  const speeds = rows.numbered('speed');
  const every = Math.ceil(starts.length / mostLooked);
  const tracks: Track[] = [];
  for (const [at, start] of starts.entries()) {
    if (at % (every * inOneGo) === 0) yield;
    if (at % every !== 0) continue;
    for (const { number, values } of speeds) {
      const mean = meanBetween(values, start, start + setup.segment);
      if (mean > 0) tracks.push({ at, motor: number, ...steadiness(values, start, setup.segment, mean) });
    }
  }
  return tracks;
}

function steadiness(values: Float32Array, from: number, size: number, mean: number) {
  let square = 0;
  // Every fourth row says how steady it was well enough.
  for (let row = from; row < from + size; row += 4) square += ((values[row] ?? mean) - mean) ** 2;
  return { turns: mean / (2 * Math.PI), spread: Math.sqrt(square / (size / 4)) / mean };
}

/** Within a segment a motor may change its speed by this share, and more where most of them are less steady. */
const steady = 0.03;

export function steadyOnes(tracks: readonly Track[]): readonly Track[] {
  const spreads = tracks.map(({ spread }) => spread);
  const most = Math.max(steady, quantile(spreads, 0.6));
  return tracks.filter(({ spread }) => spread <= most);
}

/** What a segment shows over its own level, bin by bin. */
export function rowAt({ over, frequencies: { length } }: ShortSpectra, at: number): Float32Array {
  return over.subarray(at * length, (at + 1) * length);
}

const grid = Float64Array.from({ length: orderCount }, (_, place) => orderOf(place));

/**
 * What the segments show at each order, summed along some tracks; between two bins on the line from one to the other.
 * `rowOf`: what a segment shows at each bin.
 */
export function* alongOrders(
  spectra: ShortSpectra,
  tracks: readonly Track[],
  rowOf = (at: number) => rowAt(spectra, at),
): Generator<void, Float64Array> {
  const { rate, segment } = spectra.setup;
  const bins = spectra.frequencies.length;
  const sums = new Float64Array(orderCount);
  const lowest = (lowestShaking * segment) / rate;
  for (const [nth, { at, turns }] of tracks.entries()) {
    if (nth % (4 * inOneGo) === 0) yield;
    if (Number.isNaN(spectra.over[at * bins] ?? Number.NaN)) continue;
    const row = rowOf(at);
    const ofRate = turns / rate;
    for (let place = 0; place < orderCount; place += 1) {
      // As `alias` folds it, in parts of the rate: here it is asked a million times.
      const tone = (grid[place] as number) * ofRate;
      const bin = Math.abs(tone - Math.round(tone)) * segment;
      if (bin < lowest) continue;
      const below = Math.min(bins - 2, Math.floor(bin));
      const share = bin - below;
      const between = (1 - share) * (row[below] as number) + share * (row[below + 1] as number);
      sums[place] = (sums[place] as number) + between;
    }
  }
  return sums;
}

/** A tone fills so many bins of a Hann window on either side, and as many more as it moves by. */
const halfTone = 2;

/** The bins of a segment that a tone of a motor fills. */
export function binsOf({ frequencies, setup }: ShortSpectra, { turns, spread }: Track, order: number) {
  const width = setup.rate / setup.segment;
  const bin = alias(order * turns, setup.rate) / width;
  const reach = halfTone + (2 * spread * order * turns) / width;
  return {
    from: Math.max(0, Math.floor(bin - reach)),
    to: Math.min(frequencies.length - 1, Math.ceil(bin + reach)),
  };
}

/** Puts what stands anyway in the place of a tone, in `over`. */
export function* takeOut(
  spectra: ShortSpectra,
  standing: Float32Array | Float64Array,
  tracks: readonly Track[],
  order: number,
): Generator<void, void> {
  for (const [nth, track] of tracks.entries()) {
    if (nth % (16 * inOneGo) === 0) yield;
    const row = rowAt(spectra, track.at);
    const { from, to } = binsOf(spectra, track, order);
    for (let bin = from; bin <= to; bin += 1)
      row[bin] = Math.min(row[bin] as number, standing[bin] as number);
  }
}
