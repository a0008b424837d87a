import { chanceLevel } from '../../physics/chance';
import { prominenceAt, summitsOf, widthAt } from '../../physics/peaks';
import { alias } from '../../physics/sampling';
import { independentAverages } from '../../physics/welch';
import type { MeasuredSpan } from '../report';
import { type FlightRows, meanBetween } from './flight-rows';
import { lowestShaking, type ShortColumn, type ShortSpectra } from './shaken';
import { quantile } from './span';

/** A tone that comes so many times for each turn of a motor. */
export interface FoundOrder {
  readonly order: MeasuredSpan;
  /** dB over what does not move. */
  readonly above: number;
  /** Turns a second of the motors, Hz: where the tone mostly was, and how far it came. */
  readonly turns: number;
  readonly slowest: number;
  readonly fastest: number;
}

/** Orders that are looked for: from half a turn to the third tone of three blades. */
const orders = { from: 0.5, to: 9.5, step: 0.004 };

const decibels = (ratio: number) => 10 * Math.log10(ratio);

/** A column of so few segments tells nothing. */
const fewestSegments = 6;
/** With fewer columns nothing tells what stands from what moves. */
const fewestColumns = 4;

export function filledColumns({ columns }: ShortSpectra): readonly ShortColumn[] {
  return columns.filter(({ segments }) => segments >= fewestSegments);
}

/**
 * What stands out at each frequency however hard the motors work: the median of the columns, for a tone that moves is in
 * few of them. Null where the motors worked too evenly to tell.
 */
export function standingOver(spectra: ShortSpectra): Float64Array | null {
  const filled = filledColumns(spectra);
  if (filled.length < fewestColumns) return null;
  return spectra.frequencies.map((_, bin) =>
    quantile(
      filled.map(({ over }) => over[bin] ?? 0),
      0.5,
    ),
  );
}

/** Within a segment a motor may change its speed by this share and more where most of them are less steady. */
const steady = 0.03;
/** Segments that are looked at, evenly over the flight. */
const mostLooked = 3000;
const inOneGo = 16;

/**
 * Tones that move with logged speeds. Each segment is read along multiples of each motor's own speed, folded down as rows
 * fold it, against what stands at these frequencies anyway: what follows the motors comes together at its order, all else
 * is smeared. The loudest is taken out before the next is looked for: seldom rows show it at the places of other orders
 * as well. Common practice of order tracking; the folding and the taking out are ours.
 */
export function* ordersOf(
  rows: FlightRows,
  spectra: ShortSpectra,
  standing: Float64Array,
): Generator<void, readonly FoundOrder[]> {
  const tracks = yield* tracksOf(rows, spectra);
  const all = tracks.map(({ turns }) => turns);
  const left: Left = { ...spectra, over: spectra.over.slice(), standing, tracks };
  const count = Math.max(1, tracks.length / Math.max(1, rows.numbered('speed').length));
  const averages = Math.max(1, independentAverages(Math.round(count), spectra.setup));
  const least = Math.max(leastAbove, 2 * decibels(chanceLevel(averages, 1e-5)));
  const [slowest, turns, fastest] = [quantile(all, 0.02), quantile(all, 0.5), quantile(all, 0.98)];
  const found: FoundOrder[] = [];
  while (found.length < mostOrders) {
    const ratios = yield* alongOrders(left);
    const [best] = summitsOf(ratios)
      .filter(({ at }) => prominenceAt(ratios, at).prominence >= least && (ratios[at] ?? 0) >= least)
      .sort((one, other) => (ratios[other.at] ?? 0) - (ratios[one.at] ?? 0));
    if (best === undefined) break;
    const order = orderAt(ratios, best.at);
    if (found.every((one) => Math.abs(Math.log(one.order.likely / order.likely)) > sameOrder))
      found.push({ order, above: ratios[best.at] ?? 0, turns, slowest, fastest });
    yield* takeOut(left, order.likely);
  }
  return found;
}

/** More of them tell nobody anything. */
const mostOrders = 6;
/** What is left of one beside itself is the same. */
const sameOrder = 0.12;

/** What is left once what was found is taken out. */
interface Left extends ShortSpectra {
  readonly standing: Float64Array;
  readonly tracks: readonly Track[];
}

function* tracksOf(rows: FlightRows, { starts, setup }: ShortSpectra): Generator<void, readonly Track[]> {
  const speeds = rows.numbered('speed').map(({ values }) => values);
  const every = Math.ceil(starts.length / mostLooked);
  const tracks: Track[] = [];
  for (const [at, start] of starts.entries()) {
    if (at % (every * inOneGo) === 0) yield;
    if (at % every === 0)
      for (const values of speeds) tracks.push({ at, ...trackOf(values, start, setup.segment) });
  }
  const known = tracks.filter(({ turns }) => turns > 0);
  const most = Math.max(
    steady,
    quantile(
      known.map(({ spread }) => spread),
      0.5,
    ),
  );
  return known.filter(({ spread }) => spread <= most);
}

/** dB by which each order stands over what does not move. */
function* alongOrders({ over, frequencies, setup, standing, tracks }: Left): Generator<void, Float64Array> {
  const count = Math.ceil(Math.log(orders.to / orders.from) / orders.step);
  const grid = Float64Array.from({ length: count }, (_, at) => orders.from * Math.exp(at * orders.step));
  const [seen, stands] = [new Float64Array(count), new Float64Array(count)];
  const bins = frequencies.length;
  const width = setup.rate / setup.segment;
  for (const [nth, { at, turns }] of tracks.entries()) {
    if (nth % (4 * inOneGo) === 0) yield;
    const from = at * bins;
    if (Number.isNaN(over[from] ?? Number.NaN)) continue;
    for (let place = 0; place < count; place += 1) {
      const bin = alias((grid[place] ?? 0) * turns, setup.rate) / width;
      // What is flown on purpose lies in the first bins.
      if (bin * width < lowestShaking) continue;
      const below = Math.min(bins - 2, Math.floor(bin));
      const share = bin - below;
      seen[place] =
        (seen[place] ?? 0) + (1 - share) * (over[from + below] ?? 0) + share * (over[from + below + 1] ?? 0);
      stands[place] =
        (stands[place] ?? 0) + (1 - share) * (standing[below] ?? 0) + share * (standing[below + 1] ?? 0);
    }
  }
  return seen.map((one, place) => (one > 0 ? decibels(one / (stands[place] ?? 0)) : 0));
}

/** A tone fills so many bins of a Hann window on either side, and as many more as it moves by. */
const halfTone = 2;

function* takeOut(
  { over, frequencies, setup, standing, tracks }: Left,
  order: number,
): Generator<void, void> {
  const bins = frequencies.length;
  const width = setup.rate / setup.segment;
  for (const [nth, { at, turns, spread }] of tracks.entries()) {
    if (nth % (16 * inOneGo) === 0) yield;
    const bin = alias(order * turns, setup.rate) / width;
    const reach = halfTone + (2 * spread * order * turns) / width;
    const row = over.subarray(at * bins, (at + 1) * bins);
    const to = Math.min(bins - 1, Math.ceil(bin + reach));
    for (let place = Math.max(0, Math.floor(bin - reach)); place <= to; place += 1)
      row[place] = Math.min(row[place] ?? 0, standing[place] ?? 0);
  }
}

/** What follows the motors stands at least so many dB over what does not. */
const leastAbove = 2;

interface Track {
  readonly at: number;
  /** Mean turns a second, Hz, and their deviation as a share of it. */
  readonly turns: number;
  readonly spread: number;
}

function trackOf(values: Float32Array, from: number, size: number): Omit<Track, 'at'> {
  const mean = meanBetween(values, from, from + size);
  let square = 0;
  // Every fourth row says how steady it was well enough.
  for (let row = from; row < from + size; row += 4) square += ((values[row] ?? mean) - mean) ** 2;
  const turns = mean / (2 * Math.PI);
  return { turns, spread: mean > 0 ? Math.sqrt(square / (size / 4)) / mean : Number.POSITIVE_INFINITY };
}

/** The middle of the summit's upper part, which many segments make; off by a tenth of its width, and a percent of speed. */
function orderAt(ratios: Float64Array, at: number): MeasuredSpan {
  const { from, to } = widthAt(ratios, at, 0.5);
  const likely = orders.from * Math.exp(orders.step * centreOf(ratios, Math.ceil(from), Math.floor(to)));
  const share = Math.hypot(0.01, 0.1 * orders.step * (to - from));
  return { likely, low: likely * (1 - share), high: likely * (1 + share), unit: '' };
}

/** The centre of what stands over the lower end of a summit's upper half. */
function centreOf(values: Float64Array, from: number, to: number): number {
  const base = Math.min(values[from] ?? 0, values[to] ?? 0);
  let [sum, moment] = [0, 0];
  for (let place = from; place <= to; place += 1) {
    const weight = Math.max(0, (values[place] ?? 0) - base) + 1e-9;
    sum += weight;
    moment += weight * place;
  }
  return moment / sum;
}
