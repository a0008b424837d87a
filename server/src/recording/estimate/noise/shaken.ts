import type { AxisName } from '../../../figures/axis-names';
import { segmentsOf, usualWelch, type WelchSetup } from '../../../physics/welch';
import type { RecordingStep } from '../../step';
import { type FlightRows, segmentStarts } from '../flight-rows';
import type { Columns, Load } from './load';

/** From this frequency up nothing is flown on purpose, Hz: hands and craft are slower. Common practice. */
export const lowestShaking = 20;

/** Densities are told in degrees. */
const degrees = (180 / Math.PI) ** 2;

/** The mean density of a signal over a flight, (deg/s)²/Hz. */
export interface LongSpectrum {
  readonly setup: WelchSetup;
  readonly frequencies: Float64Array;
  readonly density: Float64Array;
  readonly segments: number;
  /** Power between the lowest shaking and half the rate in each segment, (deg/s)². */
  readonly powers: readonly number[];
}

/** Segments so long, s, tell standing tones apart. */
const longSegment = 1;
/** And so long, tones that move: one that moves by r Hz a second is sharpest over 1/√r. */
const shortSegment = 0.25;
const fewestLong = 8;

/** A power of two, nearest to so many seconds. */
function segmentNear(seconds: number, rate: number): number {
  return 2 ** Math.max(4, Math.round(Math.log2(seconds * rate)));
}

/** As long as usual, and shorter in a flight of a few seconds only. */
export function longSetup({ rate, seconds }: FlightRows): WelchSetup {
  let segment = segmentNear(longSegment, rate);
  while (segment > 32 && (2 * seconds * rate) / segment - 1 < fewestLong) segment /= 2;
  return usualWelch(rate, segment);
}

export function shortSetup({ rate }: FlightRows): WelchSetup {
  return usualWelch(rate, segmentNear(shortSegment, rate));
}

/** Segments between two breaths: some milliseconds. */
const inOneGo = 48;

export function* longSpectrum(
  rows: FlightRows,
  values: Float32Array,
  setup: WelchSetup,
): Generator<void, LongSpectrum> {
  const { frequencies, addTo } = segmentsOf(setup);
  const density = new Float64Array(frequencies.length);
  const powers: number[] = [];
  const width = setup.rate / setup.segment;
  const lowest = Math.ceil(lowestShaking / width);
  let before = 0;
  for (const [at, start] of segmentStarts(
    rows.airborne,
    setup.segment,
    setup.segment - setup.overlap,
  ).entries()) {
    if (at % inOneGo === inOneGo - 1) yield;
    if (!addTo(density, values, start)) continue;
    let sum = 0;
    for (let bin = lowest; bin < density.length; bin += 1) sum += density[bin] ?? 0;
    powers.push((sum - before) * width * degrees);
    before = sum;
  }
  const by = degrees / powers.length;
  return { setup, frequencies, density: density.map((one) => one * by), segments: powers.length, powers };
}

/** All short segments of a signal. */
export interface ShortSpectra {
  readonly axis: AxisName;
  readonly setup: WelchSetup;
  readonly frequencies: Float64Array;
  readonly starts: readonly number[];
  readonly loads: readonly number[];
  /** Density of each segment over its own level, one row after the other: what stands out, however loud the rest is. */
  readonly over: Float32Array;
  /** Of each column of load: the mean density, (deg/s)²/Hz, and of what stands out; null where there are few. */
  readonly columns: readonly ShortColumn[];
}

export interface ShortColumn {
  readonly density: Float64Array;
  readonly over: Float64Array;
  readonly segments: number;
}

/** More short segments than this are not kept, but every second, third, …: memory is bounded. */
const mostKept = 12_000;

export function shortStarts(rows: FlightRows, setup: WelchSetup): readonly number[] {
  const all = segmentStarts(rows.airborne, setup.segment, setup.segment - setup.overlap);
  const every = Math.ceil(all.length / mostKept);
  return every === 1 ? all : all.filter((_, at) => at % every === 0);
}

export function* loadsOf(
  load: Load,
  starts: readonly number[],
  segment: number,
): Generator<void, readonly number[]> {
  const loads: number[] = [];
  for (const start of starts) {
    if (loads.length % inOneGo === inOneGo - 1) yield;
    loads.push(load.at(start, start + segment));
  }
  return loads;
}

export function* shortSpectra(
  axis: AxisName,
  values: Float32Array,
  setup: WelchSetup,
  { starts, loads, columns }: { starts: readonly number[]; loads: readonly number[]; columns: Columns },
): Generator<void, ShortSpectra> {
  const { frequencies, addTo } = segmentsOf(setup);
  const bins = frequencies.length;
  const over = new Float32Array(starts.length * bins);
  const sums = columns.edges.slice(1).map(() => ({
    density: new Float64Array(bins),
    over: new Float64Array(bins),
    segments: 0,
  }));
  const lowest = Math.max(1, Math.ceil((lowestShaking * setup.segment) / setup.rate));
  const one = new Float64Array(bins);
  for (const [at, start] of starts.entries()) {
    if (at % inOneGo === inOneGo - 1) yield;
    one.fill(0);
    const row = over.subarray(at * bins, (at + 1) * bins);
    const level = addTo(one, values, start) ? levelOf(one, lowest) : 0;
    if (!(level > 0)) {
      row.fill(Number.NaN);
      continue;
    }
    for (let bin = 0; bin < bins; bin += 1) row[bin] = (one[bin] ?? 0) / level;
    const sum = sums[columns.of(loads[at] ?? Number.NaN) ?? -1];
    if (sum === undefined) continue;
    sum.segments += 1;
    for (let bin = 0; bin < bins; bin += 1) {
      sum.density[bin] = (sum.density[bin] ?? 0) + degrees * (one[bin] ?? 0);
      sum.over[bin] = (sum.over[bin] ?? 0) + (row[bin] ?? 0);
    }
  }
  const means = sums.map(({ segments, ...rest }) => ({
    density: rest.density.map((value) => value / segments),
    over: rest.over.map((value) => value / segments),
    segments,
  }));
  return { axis, setup, frequencies, starts, loads, over, columns: means };
}

/** The geometric mean of a segment's shaking: a tone hardly moves it. */
function levelOf(density: Float64Array, lowest: number): number {
  let sum = 0;
  for (let bin = lowest; bin < density.length; bin += 1) sum += Math.log(Math.max(density[bin] ?? 0, 1e-30));
  return Math.exp(sum / (density.length - lowest));
}

/** The work of a generator as steps that say what is done. */
export function* doing<T>(
  work: Generator<void, T>,
  share: number,
  what: string,
): Generator<RecordingStep, T> {
  for (;;) {
    const step = work.next();
    if (step.done === true) return step.value;
    yield { share, doing: what };
  }
}
