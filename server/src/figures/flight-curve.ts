import { restVoltage } from '../physics/cells';
import { packUnderLoad, secondsToUse } from '../physics/discharge';
import { needsForThrust, stateAtThrottle } from '../physics/drive';
import { type Carried, packInFlight, withDrive } from './carried';
import { carriedBy } from './drive';
import { flightEnds, hoverFlight } from './flight-time';
import { model } from './model';

/** What a pack shows and gives at one moment of a flight. */
export interface FlightMoment {
  /** Since take-off with a full pack, s. */
  readonly seconds: number;
  /** Of a cell, V: in the hover, and in the first second of full throttle; null where the throttle can't be read. */
  readonly hoverCell: number;
  readonly fullCell: number | null;
  /** At full throttle. */
  readonly thrustToWeight: number | null;
}

/** The charge that is flown is looked at in so many even steps. */
const steps = 40;

/** A flight of nothing but hovering, as it is likely, from full until it is due to land. */
export const flightCurve = model<[], readonly FlightMoment[]>('flight curve', (own) => {
  const carried = carriedBy(own)?.value.likely;
  const ends = carried === undefined ? null : flightEnds(own, 'landing');
  const flight = carried === undefined || ends === null ? null : hoverFlight(carried, ends(carried));
  if (carried === undefined || flight === null) return null;
  const { from, to } = flight;
  const moments = Array.from({ length: steps + 1 }, (_, step) =>
    momentAt(carried, from, from + (step / steps) * (to - from)),
  );
  return { value: moments.flatMap((moment) => moment ?? []) };
});

function momentAt(carried: Carried, full: number, charge: number): FlightMoment | null {
  const pack = packInFlight(carried);
  const { load } = needsForThrust(carried.drive, carried.weight);
  const open = pack.cells * restVoltage(pack.atRest, charge);
  const hover = packUnderLoad(open, pack.resistance, load);
  const seconds = secondsToUse(pack, load, full, charge);
  if (hover === null || seconds === null) return null;
  const { drive } = withDrive(carried, { openVoltage: open });
  const most = carried.throttle === null ? null : stateAtThrottle(drive, carried.throttle.most);
  return {
    seconds,
    hoverCell: hover.voltage / pack.cells,
    fullCell: most === null ? null : most.packVoltage / pack.cells,
    thrustToWeight: most === null ? null : (drive.count * most.thrust) / carried.weight,
  };
}
