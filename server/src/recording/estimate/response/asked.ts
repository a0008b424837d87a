import type { AxisName } from '../../../figures/axis-names';
import { independentAverages, type WelchSetup } from '../../../physics/welch';
import { type FlightRows, meanBetween, segmentStarts } from '../flight-rows';
import { quantile } from '../span';

/** The parts of a flight in which the sticks asked for something about an axis, and the motors could give it. */
export interface AskedSegments {
  readonly setup: WelchSetup;
  readonly starts: readonly number[];
  /** How many independent ones would scatter as little. */
  readonly averages: number;
  /** How far the sticks' call moves in them, rad/s rms. */
  readonly moved: number;
  /** Where it mostly rests, rad/s. */
  readonly rests: number;
  /** Left out, though something was asked for: motors stood at a limit. */
  readonly saturated: number;
}

/** So long an answer is looked at, s: a craft has answered by then. */
const segmentSeconds = 0.75;
/** Segments begin a quarter of one after the other: with this window as much again is seen as with halves. */
const overlapShare = 0.75;
/** So many tell all there is: those of a longer flight begin farther apart. */
const mostSegments = 800;
/** Segments in which less of the power of the liveliest was asked for say little but noise. Ours. */
const leastPower = 0.1;
/** Of the liveliest segments one in so many may be livelier than all that count. */
const lively = 0.95;
/** Motors so near to an end are at it, as shares of their way; and for so little of the time they may be. */
const ends = { least: 0.005, most: 0.99 };
const mostAtEnd = 0.02;
/** Segments between two breaths: some milliseconds. */
const inOneGo = 24;

function askedSetup({ rate, seconds }: FlightRows): WelchSetup {
  const segment = 2 ** Math.max(5, Math.round(Math.log2(segmentSeconds * rate)));
  const step = Math.max(
    segment - Math.floor(overlapShare * segment),
    Math.ceil((seconds * rate) / mostSegments),
  );
  return {
    rate,
    segment,
    overlap: segment - step,
    window: 'hann',
    without: 'mean',
  };
}

/** Null where the axis has no column of what was asked for. */
export function* askedSegments(
  rows: FlightRows,
  axis: AxisName,
  ended: Uint8Array | null,
): Generator<void, AskedSegments | null> {
  const wanted = rows.channel(`wanted.${axis}`);
  if (wanted === null) return null;
  const setup = askedSetup(rows);
  const step = setup.segment - setup.overlap;
  const all: { start: number; power: number; mean: number; isFree: boolean }[] = [];
  for (const start of segmentStarts(rows.airborne, setup.segment, step)) {
    if (all.length % inOneGo === inOneGo - 1) yield;
    const power = powerIn(wanted, start, setup.segment);
    if (Number.isNaN(power)) continue;
    all.push({
      start,
      power,
      mean: meanBetween(wanted, start, start + setup.segment),
      isFree: ended === null || meanIn(ended, start, setup.segment) <= mostAtEnd,
    });
  }
  const rising = Float64Array.from(all, ({ power }) => power).sort();
  const least = leastPower * (rising[Math.floor(lively * (rising.length - 1))] ?? 0);
  const asked = all.filter(({ power }) => power > 0 && power >= least);
  const free = asked.filter(({ isFree }) => isFree);
  const starts = free.map(({ start }) => start);
  const mean = free.reduce((sum, { power }) => sum + power, 0) / Math.max(1, free.length);
  return {
    setup,
    starts,
    averages: averagesOf(starts, setup),
    moved: Math.sqrt(mean),
    rests: quantile(
      all.map((one) => one.mean),
      0.5,
    ),
    saturated: asked.length - free.length,
  };
}

/** Runs of segments that overlap each count by themselves. */
function averagesOf(starts: readonly number[], setup: WelchSetup): number {
  const step = setup.segment - setup.overlap;
  const known = new Map<number, number>();
  const ofRun = (count: number) => {
    const found = known.get(count) ?? independentAverages(count, setup);
    known.set(count, found);
    return found;
  };
  let [sum, run] = [0, 0];
  for (const [at, start] of starts.entries()) {
    run += 1;
    if (starts[at + 1] === start + step) continue;
    sum += ofRun(run);
    run = 0;
  }
  return sum;
}

/** About its own mean. */
function powerIn(values: Float32Array, from: number, count: number): number {
  let [sum, square] = [0, 0];
  for (let row = from; row < from + count; row += 1) {
    const value = values[row] ?? Number.NaN;
    sum += value;
    square += value * value;
  }
  return Math.max(0, square / count - (sum / count) ** 2);
}

function meanIn(values: Uint8Array, from: number, count: number): number {
  let sum = 0;
  for (let row = from; row < from + count; row += 1) sum += values[row] ?? 0;
  return sum / count;
}

/** Of each row: whether a motor is told its least or its most; null where that was not logged. */
export function* endedRows(rows: FlightRows): Generator<void, Uint8Array | null> {
  const motors = rows.numbered('motor').map(({ values }) => values);
  const [first] = motors;
  if (first === undefined) return null;
  const ended = new Uint8Array(first.length);
  for (const { from, to } of rows.airborne)
    for (let start = from; start < to; start += rowsInOneGo) {
      yield;
      for (let row = start; row < Math.min(to, start + rowsInOneGo); row += 1)
        for (const values of motors) {
          const value = values[row] ?? Number.NaN;
          if (value <= ends.least || value >= ends.most) ended[row] = 1;
        }
    }
  return ended;
}

const rowsInOneGo = 50_000;
