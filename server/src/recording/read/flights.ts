import type { Channel } from '../channel';
import type { RecordedFlight } from '../recording';
import { endsPiece, type Paced } from './paced';
import { stretchesOf } from './stretches';
import type { TimeSegment } from './timeline';

/** A motor that is told more than this runs: 1 is full. */
const runs = 0.01;
/** Shorter rests are part of a flight, s. */
const rest = 5;
/** Rows before the motors start and after they stop that are kept, s. */
const margin = 0.5;
/** Less is no flight, s. */
const shortest = 1;

/**
 * The flights of these segments: where motors are logged, from the moment in which one of them runs to the one in
 * which all stand again; a rest of some seconds parts two.
 */
export function* flightsOf(
  time: Float64Array,
  segments: readonly TimeSegment[],
  channels: ReadonlyMap<Channel, Float32Array>,
): Paced<readonly RecordedFlight[]> {
  const motors = [...channels].flatMap(([name, values]) => (name.startsWith('motor.') ? [values] : []));
  const flown: TimeSegment[] = [];
  for (const segment of segments)
    flown.push(...(motors.length === 0 ? [segment] : yield* running(time, segment, motors)));
  const flights: RecordedFlight[] = [];
  for (const part of flown.length === 0 ? segments : flown) {
    const stretches = yield* stretchesOf(time, part);
    if (stretches.length > 0) flights.push({ ...part, stretches });
  }
  return flights;
}

function* running(
  time: Float64Array,
  segment: TimeSegment,
  motors: readonly Float32Array[],
): Paced<readonly TimeSegment[]> {
  const found: { from: number; to: number }[] = [];
  const at = (row: number) => time[row] as number;
  for (let row = segment.from; row < segment.to; row += 1) {
    if (endsPiece(row)) yield;
    if (!anyRuns(motors, row)) continue;
    const last = found.at(-1);
    if (last === undefined || at(row) - at(last.to - 1) > rest) found.push({ from: row, to: row + 1 });
    else last.to = row + 1;
  }
  return found
    .filter(({ from, to }) => at(to - 1) - at(from) >= shortest)
    .map(({ from, to }) => widened(time, segment, from, to));
}

function anyRuns(motors: readonly Float32Array[], row: number): boolean {
  for (const motor of motors) if ((motor[row] as number) > runs) return true;
  return false;
}

function widened(time: Float64Array, segment: TimeSegment, from: number, to: number): TimeSegment {
  let [first, end] = [from, to];
  while (first > segment.from && (time[from] as number) - (time[first - 1] as number) <= margin) first -= 1;
  while (end < segment.to && (time[end] as number) - (time[to - 1] as number) <= margin) end += 1;
  return { from: first, to: end };
}
