import type { RestPoint } from '../physics/cells';
import type { Pack } from '../physics/discharge';
import type { Drive } from '../physics/drive';
import type { Throttle } from './throttle';

/** Motors, propellers and pack, with the weight that they carry. */
export interface Carried {
  readonly drive: Drive;
  /** N */
  readonly weight: number;
  /** What the pack gives from full to empty, C. */
  readonly charge: number;
  readonly pack: CarriedPack;
  /** Propellers' pitch, m. */
  readonly pitch: number;
  /** Whether the controllers slow the motors down, or let them coast. */
  readonly brakes: boolean;
  /** What the script makes of the throttle; null where it can't be read. */
  readonly throttle: Throttle | null;
}

export interface CarriedPack {
  /** In series. */
  readonly cells: number;
  /** What one of them shows at rest, by its charge: rising. */
  readonly atRest: readonly RestPoint[];
  /** Share of its charge that it holds fresh from the charger. */
  readonly full: number;
  /** Of the pack alone, ohm, as full throttle meets it within its first second. */
  readonly resistance: number;
  /** How many times that it has after some ten seconds: what it flies with. */
  readonly inFlight: number;
  /** Of leads and plugs, there and back, ohm. */
  readonly leads: number;
}

/**
 * The same with something else in place. Field by field, here and below: a sheet makes some thousand models, and
 * spreading them took it a twentieth of its time.
 */
export function changed(
  model: Carried,
  change: Partial<Pick<Carried, 'drive' | 'pack' | 'weight' | 'charge'>>,
): Carried {
  const { pitch, brakes, throttle } = model;
  const { drive = model.drive, pack = model.pack, weight = model.weight, charge = model.charge } = change;
  return { drive, weight, charge, pack, pitch, brakes, throttle };
}

export function withDrive(model: Carried, change: DriveChange): Carried {
  return changed(model, { drive: changedDrive(model.drive, change) });
}

type DriveChange = Partial<Omit<Drive, 'count' | 'airDensity'>>;

function changedDrive(drive: Drive, change: DriveChange): Drive {
  return {
    motor: change.motor ?? drive.motor,
    propeller: change.propeller ?? drive.propeller,
    count: drive.count,
    airDensity: drive.airDensity,
    openVoltage: change.openVoltage ?? drive.openVoltage,
    sourceResistance: change.sourceResistance ?? drive.sourceResistance,
    otherPower: change.otherPower ?? drive.otherPower,
    controllerLoss: change.controllerLoss ?? drive.controllerLoss,
  };
}

export function withPack(
  model: Carried,
  change: Partial<Pick<CarriedPack, 'resistance' | 'inFlight' | 'leads'>>,
): Carried {
  const { pack } = model;
  const { resistance = pack.resistance, inFlight = pack.inFlight, leads = pack.leads } = change;
  return changed(model, {
    drive: changedDrive(model.drive, { sourceResistance: resistance + leads }),
    pack: { cells: pack.cells, atRest: pack.atRest, full: pack.full, resistance, inFlight, leads },
  });
}

/** What stands between the pack's cells and the motors in steady flight, ohm. */
export function flightResistance({ pack: { resistance, inFlight, leads } }: Carried): number {
  return inFlight * resistance + leads;
}

/** The drive as it is in steady flight. */
export function driveInFlight(carried: Carried): Drive {
  return changedDrive(carried.drive, { sourceResistance: flightResistance(carried) });
}

/** The pack as it empties in steady flight. */
export function packInFlight(carried: Carried): Pack {
  const { cells, atRest } = carried.pack;
  return { cells, atRest, resistance: flightResistance(carried), charge: carried.charge };
}
