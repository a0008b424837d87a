import { type FlightRows, meanBetween } from '../flight-rows';
import { voltageBehind } from './voltage-behind';

/** Rows of what a motor is told and how it turns, evenly spaced. */
export interface LagRows {
  readonly rate: number;
  readonly output: Float64Array;
  readonly speed: Float64Array;
  /** As all motors together make it: what is measured comes late. Null where it was not logged. */
  readonly voltage: Float64Array | null;
}

/** As many rows tell the time constant well enough; faster ones than this are put together. */
const mostRows = 7000;
const fastest = 600;

/** Of each motor that says both, from the longest time in the air without a gap. */
export function lagRows(rows: FlightRows): ReadonlyMap<number, LagRows> {
  const [longest] = [...rows.airborne].sort((one, other) => other.to - other.from - (one.to - one.from));
  if (longest === undefined) return new Map();
  const together = Math.max(1, Math.floor(rows.rate / fastest));
  const rate = rows.rate / together;
  const count = Math.min(mostRows, Math.floor((longest.to - longest.from) / together));
  const taken = (values: Float32Array) =>
    filledIn(
      Float64Array.from({ length: count }, (_, at) => {
        const from = longest.from + at * together;
        return meanBetween(values, from, from + together);
      }),
    );
  const speeds = rows.numbered('speed');
  const motors = rows.numbered('motor').flatMap(({ number, values }) => {
    const speed = speeds.find((one) => one.number === number)?.values;
    return speed === undefined ? [] : [{ number, output: taken(values), speed: taken(speed) }];
  });
  const measured = rows.channel('voltage');
  const voltage = measured === null ? null : voltageBehind(taken(measured), motors, rate);
  return new Map(motors.map(({ number, output, speed }) => [number, { rate, output, speed, voltage }]));
}

/** A cell that says nothing says what the one before it did. */
function filledIn(values: Float64Array): Float64Array {
  let last = values.find((value) => !Number.isNaN(value)) ?? 0;
  return values.map((value) => {
    if (!Number.isNaN(value)) last = value;
    return last;
  });
}
