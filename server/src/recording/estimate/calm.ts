import { axisNames } from '../../figures/axis-names';
import { type FlightRows, meanBetween } from './flight-rows';
import { quantile } from './span';

/** A short while in which the craft neither turned nor was given more or less throttle. */
export interface CalmWindow {
  readonly from: number;
  readonly to: number;
}

/** Long enough for the throttle to tell whether it is held, s. */
const windowSeconds = 0.5;
/** How fast a craft turns that is held still by hand, and how far its throttle moves meanwhile. Common practice. */
const still = { rate: (20 * Math.PI) / 180, throttle: 0.02 };

/** Nobody says how it climbs: what is held for most of the calm time is taken for the hover. Null where nothing tells. */
export function calmWindows(rows: FlightRows): readonly CalmWindow[] | null {
  const throttle = throttleOf(rows);
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
      const ends = start + size;
      const isHeld = movesBy(throttle, start, ends, part) <= still.throttle;
      if (isHeld && gyros.every((values) => turnsBy(values, start, ends, part) <= still.rate))
        windows.push({ from: start, to: ends });
    }
  return windows;
}

/** The throttle where it is logged, else the mean of what the motors are told. */
export function throttleOf(rows: FlightRows): Float32Array | null {
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

/** Of some values of calm windows those that lie with most of them: what was only passed through is left out. */
export function together(values: readonly number[]): readonly number[] {
  const middle = quantile(values, 0.5);
  const off = quantile(
    values.map((value) => Math.abs(value - middle)),
    0.5,
  );
  return values.filter((value) => Math.abs(value - middle) <= 3 * off + 1e-9);
}
