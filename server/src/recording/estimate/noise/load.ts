import type { NoiseMap } from '../../report';
import { type FlightRows, meanBetween } from '../flight-rows';
import { quantile } from '../span';

/** How hard the motors work, in a segment: what noise is looked at against. */
export interface Load {
  readonly against: NoiseMap['against'];
  /** A share, or turns a second (Hz); NaN where it was not logged. */
  readonly at: (from: number, to: number) => number;
}

/** By the motors' speed where it is logged, else by the throttle, else by what the motors are told; null: by nothing. */
export function loadOf(rows: FlightRows): Load | null {
  const speeds = rows.numbered('speed').map(({ values }) => values);
  if (speeds.length > 0) return { against: 'motor speed', at: meanOfAll(speeds, 1 / (2 * Math.PI)) };
  const throttle = rows.channel('throttle');
  if (throttle !== null) return { against: 'throttle', at: meanOfAll([throttle], 1) };
  const motors = rows.numbered('motor').map(({ values }) => values);
  return motors.length > 0 ? { against: 'motor output', at: meanOfAll(motors, 1) } : null;
}

function meanOfAll(channels: readonly Float32Array[], unit: number): Load['at'] {
  return (from, to) => {
    const means = channels.map((values) => meanBetween(values, from, to));
    return (unit * means.reduce((sum, one) => sum + one, 0)) / means.length;
  };
}

export interface Columns {
  /** One more than there are columns. */
  readonly edges: readonly number[];
  /** Of a load; null for one that lies outside. */
  readonly of: (load: number) => number | null;
}

const columnCount = 12;
/** A load that is the same all the time to this share makes one column. */
const leastSpread = 0.02;

/** Columns of equal width from the least load to the most, but for the few segments at either end. */
export function loadColumns(loads: readonly number[]): Columns | null {
  const known = loads.filter((one) => !Number.isNaN(one));
  if (known.length === 0) return null;
  const [low, high] = [quantile(known, 0.01), quantile(known, 0.99)];
  const isOne = high - low < leastSpread * Math.abs(high);
  const count = isOne ? 1 : columnCount;
  const [from, width] = isOne ? [low * 0.99, Math.abs(high) * 0.02 + 1e-9] : [low, (high - low) / count];
  return {
    edges: Array.from({ length: count + 1 }, (_, at) => from + at * width),
    of: (load) => {
      const column = Math.floor((load - from) / width);
      if (load === from + count * width) return count - 1;
      return column >= 0 && column < count ? column : null;
    },
  };
}
