import { axisNames } from '../../figures/axis-names';
import { type FlightRows, meanBetween } from './flight-rows';

/** A short while in which the craft neither turned nor was given more or less throttle. */
export interface CalmWindow {
  readonly from: number;
  readonly to: number;
}

/** Long enough for the throttle to tell whether it is held, s. */
const windowSeconds = 0.5;
/** How fast a craft turns that is held still by hand, and how far its throttle moves meanwhile. Common practice. */
const still = { rate: (20 * Math.PI) / 180, throttle: 0.02 };

/** Null where no column tells. */
export function* calmWindows(rows: FlightRows): Generator<void, readonly CalmWindow[] | null> {
  const throttle = heldThrottle(rows);
  const gyros = axisNames.flatMap(
    (axis) => rows.channel(`gyro.${axis}`) ?? rows.channel(`unfiltered-gyro.${axis}`) ?? [],
  );
  if (throttle === null || gyros.length === 0) return null;
  const size = Math.max(2, Math.round(windowSeconds * rows.rate));
  // What shakes is no turning: means over so many rows.
  const part = Math.max(1, Math.round(size / 8));
  const windows: CalmWindow[] = [];
  for (const { from, to } of rows.airborne)
    for (let start = from; start + size <= to; start += size) {
      yield;
      const ends = start + size;
      const isHeld = movesBy(throttle, start, ends, part) <= still.throttle;
      if (isHeld && gyros.every((values) => turnsBy(values, start, ends, part) <= still.rate))
        windows.push({ from: start, to: ends });
    }
  return windows;
}

/** The throttle where it is logged, else the mean of what the motors are told. */
export function heldThrottle(rows: FlightRows): Float32Array | null {
  const throttle = rows.channel('throttle');
  if (throttle !== null) return throttle;
  const motors = rows.numbered('motor').map(({ values }) => values);
  const [first] = motors;
  if (first === undefined) return null;
  return first.map(
    (_, row) => motors.reduce((sum, values) => sum + (values[row] ?? Number.NaN), 0) / motors.length,
  );
}

function partsOf(values: Float32Array, from: number, to: number, part: number): readonly number[] {
  const means: number[] = [];
  for (let start = from; start + part <= to; start += part)
    means.push(meanBetween(values, start, start + part));
  return means;
}

function movesBy(values: Float32Array, from: number, to: number, part: number): number {
  const means = partsOf(values, from, to, part);
  return Math.max(...means) - Math.min(...means);
}

function turnsBy(values: Float32Array, from: number, to: number, part: number): number {
  return Math.sqrt(partsOf(values, from, to, part).reduce((sum, mean) => sum + mean ** 2 / 8, 0));
}

/**
 * Of calm windows those that hover. A craft that climbs or sinks evenly is as calm; but over a flight that neither ends
 * faster nor slower than it began, the mean of the thrust carries the weight (Newton). Thrust goes with the square of the
 * speeds, or about so of what the motors are told, by the pack's voltage.
 */
export function* hoverWindows(
  rows: FlightRows,
  windows: readonly CalmWindow[],
): Generator<void, readonly CalmWindow[]> {
  const thrust = thrustOf(rows);
  if (thrust === null) return windows;
  const size = Math.max(1, Math.round(rows.rate / 20));
  let [sum, count] = [0, 0];
  for (const { from, to } of rows.airborne)
    for (let start = from; start + size <= to; start += size) {
      const one = thrust(start, start + size);
      if (Number.isNaN(one)) continue;
      sum += one;
      count += 1;
      if (count % 100 === 0) yield;
    }
  const shares = windows.map(({ from, to }) => thrust(from, to) / (sum / count));
  const nearest = shares.reduce((best, one) => (Math.abs(one - 1) < Math.abs(best - 1) ? one : best), 0);
  if (Math.abs(nearest - 1) > farFromMean) return [];
  return windows.filter((_, at) => Math.abs((shares[at] ?? 0) - nearest) <= nearMean);
}

/** Shares of the thrust: what a hover is uneven by; and what leaning, and the air on the way up and down, take. Common practice. */
const nearMean = 0.08;
const farFromMean = 0.25;
/** Speed grows less than the volts of a motor: thrust by a power of them between 1 and 2. */
const power = 1.6;

function thrustOf(rows: FlightRows): ((from: number, to: number) => number) | null {
  const speeds = rows.numbered('speed').map(({ values }) => values);
  if (speeds.length > 0)
    return (from, to) =>
      speeds.reduce((sum, values) => sum + meanBetween(values, from, to) ** 2, 0) / speeds.length;
  const throttle = heldThrottle(rows);
  const voltage = rows.channel('voltage');
  if (throttle === null) return null;
  return (from, to) => {
    const volts = voltage === null ? 1 : meanBetween(voltage, from, to);
    return (Math.max(0, meanBetween(throttle, from, to)) * volts) ** power;
  };
}
