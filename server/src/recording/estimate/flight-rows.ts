import type { Channel } from '../channel';
import type { Recording, RowStretch } from '../recording';
import { quantile } from './span';

/** The rows of one flight, as the estimates read them. */
export interface FlightRows {
  readonly recording: Recording;
  /** Rows a second, Hz. */
  readonly rate: number;
  /** All without a gap from arming to landing; those whose rate is another are left out. */
  readonly stretches: readonly RowStretch[];
  /** The parts of them in which the motors carry the craft, as far as a column tells. */
  readonly airborne: readonly RowStretch[];
  /** Of the airborne parts. */
  readonly seconds: number;
  /** Null where it was not logged, or says nothing in this flight. */
  readonly channel: (name: Channel) => Float32Array | null;
  /** Of those numbered so, from 1 on, in order. */
  readonly numbered: (name: 'motor' | 'speed') => readonly NumberedChannel[];
}

export interface NumberedChannel {
  readonly number: number;
  readonly values: Float32Array;
}

/** Rates of two stretches that differ by less are the same. */
const sameRate = 0.02;

/** Null where the flight has no two rows one after the other. */
export function flightRows(recording: Recording, flight: number): FlightRows | null {
  const all = (recording.flights[flight - 1]?.stretches ?? []).filter(
    ({ from, to, rate }) => to > from + 1 && rate > 0,
  );
  const [longest] = [...all].sort((one, other) => other.to - other.from - (one.to - one.from));
  if (longest === undefined) return null;
  const stretches = all.filter(({ rate }) => Math.abs(rate / longest.rate - 1) < sameRate);
  const rows = stretches.reduce((sum, { from, to }) => sum + to - from, 0);
  const rate = stretches.reduce((sum, one) => sum + one.rate * (one.to - one.from), 0) / rows;
  const channel = (name: Channel) => {
    const values = recording.channels.get(name);
    return values !== undefined && saysSomething(values, stretches) ? values : null;
  };
  const numbered = (name: 'motor' | 'speed') =>
    Array.from({ length: 12 }, (_, at) => at + 1).flatMap((number) => {
      const values = channel(`${name}.${number}`);
      return values === null ? [] : [{ number, values }];
    });
  const carrying = numbered('speed')[0]?.values ?? channel('throttle') ?? numbered('motor')[0]?.values;
  const airborne = carrying === undefined ? stretches : carried(stretches, carrying, rate);
  const seconds = airborne.reduce((sum, { from, to }) => sum + to - from, 0) / rate;
  return { recording, rate, stretches, airborne, seconds, channel, numbered };
}

function saysSomething(values: Float32Array, stretches: readonly RowStretch[]): boolean {
  return stretches.some(({ from, to }) => {
    for (let row = from; row < to; row += 1) if (!Number.isNaN(values[row])) return true;
    return false;
  });
}

/** With less than this share of what it mostly is, what carries the craft does not. Common practice. */
const leastCarrying = 0.5;

/** From the first row to the last in which the craft is carried: falls within a flight are flight. */
function carried(
  stretches: readonly RowStretch[],
  values: Float32Array,
  rate: number,
): readonly RowStretch[] {
  const sampled: number[] = [];
  const step = Math.max(1, Math.round(rate / 20));
  for (const { from, to } of stretches)
    for (let row = from; row < to; row += step) {
      const value = values[row] ?? Number.NaN;
      if (!Number.isNaN(value)) sampled.push(value);
    }
  const least = leastCarrying * quantile(sampled, 0.5);
  const isCarried = (row: number) => (values[row] ?? Number.NaN) >= least;
  const first = stretches.flatMap(({ from, to }) => firstRow(from, to, isCarried) ?? [])[0];
  const last = [...stretches].reverse().flatMap(({ from, to }) => lastRow(from, to, isCarried) ?? [])[0];
  if (first === undefined || last === undefined) return stretches;
  return stretches
    .map((one) => ({ ...one, from: Math.max(one.from, first), to: Math.min(one.to, last + 1) }))
    .filter(({ from, to }) => to > from + 1);
}

function firstRow(from: number, to: number, is: (row: number) => boolean): number | null {
  for (let row = from; row < to; row += 1) if (is(row)) return row;
  return null;
}

function lastRow(from: number, to: number, is: (row: number) => boolean): number | null {
  for (let row = to - 1; row >= from; row -= 1) if (is(row)) return row;
  return null;
}

/** Where segments of so many rows begin, each so many rows after the one before. */
export function segmentStarts(
  stretches: readonly RowStretch[],
  size: number,
  step: number,
): readonly number[] {
  return stretches.flatMap(({ from, to }) =>
    Array.from(
      { length: Math.max(0, Math.floor((to - from - size) / step) + 1) },
      (_, at) => from + at * step,
    ),
  );
}

/** The mean of a channel between rows; cells that say nothing are left out, NaN where all do. */
export function meanBetween(values: ArrayLike<number>, from: number, to: number): number {
  let [sum, count] = [0, 0];
  for (let row = from; row < to; row += 1) {
    const value = values[row] ?? Number.NaN;
    if (Number.isNaN(value)) continue;
    sum += value;
    count += 1;
  }
  return sum / count;
}
