import { type FlightRows, meanBetween } from './flight-rows';

/** Rows of what a motor is told and how it turns, evenly spaced. */
export interface LagRows {
  readonly rate: number;
  readonly output: Float64Array;
  readonly speed: Float64Array;
  readonly voltage: Float64Array | null;
}

/** As many rows tell the time constant well enough; faster ones than this are put together. */
const mostRows = 7000;
const fastest = 600;

/** From the longest time in the air without a gap. */
export function lagRows(rows: FlightRows, output: Float32Array, speed: Float32Array): LagRows | null {
  const [longest] = [...rows.airborne].sort((one, other) => other.to - other.from - (one.to - one.from));
  if (longest === undefined) return null;
  const together = Math.max(1, Math.floor(rows.rate / fastest));
  const count = Math.min(mostRows, Math.floor((longest.to - longest.from) / together));
  const voltage = rows.channel('voltage');
  const taken = (values: Float32Array) =>
    filledIn(
      Float64Array.from({ length: count }, (_, at) => {
        const from = longest.from + at * together;
        return meanBetween(values, from, from + together);
      }),
    );
  return {
    rate: rows.rate / together,
    output: taken(output),
    speed: taken(speed),
    voltage: voltage === null ? null : taken(voltage),
  };
}

/** A cell that says nothing says what the one before it did. */
function filledIn(values: Float64Array): Float64Array {
  let last = values.find((value) => !Number.isNaN(value)) ?? 0;
  return values.map((value) => {
    if (!Number.isNaN(value)) last = value;
    return last;
  });
}
