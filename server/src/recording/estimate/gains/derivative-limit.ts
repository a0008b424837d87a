import type { AxisName } from '../../../figures/axis-names';
import type { FlightRows } from '../flight-rows';

/** What bounds a derivative, and what it is made of. */
export interface BoundedDerivative {
  /** Share of the motors’ range a rad/s². */
  readonly gain: number;
  /** The most that it may ask for, a share of the motors’ range. */
  readonly limit: number;
  /** Of its lowest low-pass, Hz; null: it has none. */
  readonly cutoff: number | null;
  /** Whether it looks at the error, and not at the gyro alone. */
  readonly ofError: boolean;
}

/** So near to its limit a derivative is taken to be held by it: its filters are followed as one lag, and not exactly. A share. Ours. */
const near = 0.9;
const rowsInOneGo = 20_000;

/**
 * Rows in which a derivative asks for about all that it may, and so no more goes with how fast the turning changes; null where
 * there are none. Its part is the slope of the rows behind one lag at its cutoff, times its gain.
 */
export function* atDerivativeLimit(
  rows: FlightRows,
  axis: AxisName,
  { gain, limit, cutoff, ofError }: BoundedDerivative,
): Generator<void, Uint8Array | null> {
  const gyro = rows.channel(`gyro.${axis}`) ?? rows.channel(`unfiltered-gyro.${axis}`);
  const wanted = ofError ? rows.channel(`wanted.${axis}`) : null;
  if (gyro === null) return null;
  const takes = cutoff === null ? 1 : 1 - Math.exp((-2 * Math.PI * cutoff) / rows.rate);
  const held = new Uint8Array(gyro.length);
  let isAny = false;
  for (const { from, to } of rows.airborne) {
    let slope = 0;
    for (let row = from + 1; row < to; row += 1) {
      if (row % rowsInOneGo === 0) yield;
      const turned = (gyro[row] ?? 0) - (gyro[row - 1] ?? 0);
      const asked = wanted === null ? 0 : (wanted[row] ?? 0) - (wanted[row - 1] ?? 0);
      const now = (turned - asked) * rows.rate;
      // A cell that holds no number ends nothing.
      if (!Number.isNaN(now)) slope += takes * (now - slope);
      if (Math.abs(gain * slope) < near * limit) continue;
      held[row] = 1;
      isAny = true;
    }
  }
  return isAny ? held : null;
}
