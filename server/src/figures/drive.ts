import { inBase } from '../catalog/known-parameter';
import type { CraftView } from '../craft/view';
import { gravity } from '../physics/atmosphere';
import { type Drive, powerForThrust } from '../physics/drive';
import { airOf } from './air';
import { motorPlaces } from './layouts';
import { flyingMass } from './mass';
import { model } from './model';
import { growing, type MotorPlate, motorFrom, motorPlateOf } from './motor-plate';
import { chemistryInView, fullCell, packCount } from './pack-in-view';
import { otherPowerOf, packSource } from './pack-source';
import { type PropellerInUse, propellerInUse } from './propeller-in-use';
import { type Throttle, throttleOf } from './throttle';
import { changedIn, type Doubt, type Doubtful, doubtful, doubtOf } from './uncertain';

/** Motors, propellers and pack, with the weight that they carry. */
export interface Carried {
  readonly drive: Drive;
  /** N */
  readonly weight: number;
  /** Propellers' pitch, m. */
  readonly pitch: number;
  /** Whether the controllers slow the motors down, or let them coast. */
  readonly brakes: boolean;
  /** What the script makes of the throttle; null where it can't be read. */
  readonly throttle: Throttle | null;
}

/** With a pack that is half used: most of a flight is flown with one. */
export const carriedBy = model<[], Doubtful<Carried>>('drive', (own) => {
  const assumed: string[] = [];
  const plate = motorPlateOf(own, assumed);
  const propeller = propellerInUse(own, assumed);
  const source = packSource(own, assumed);
  const air = airOf(own);
  const mass = flyingMass(own);
  const count = motorPlaces(own.word('craft.layout') ?? '')?.length;
  if (plate === null || propeller === null || source === null || air === null) return null;
  if (mass === null || count === undefined) return null;
  const { pitch, spread, ...coefficients } = propeller;
  const otherPower = otherPowerOf(own, source.voltage, assumed);
  const drive: Drive = {
    motor: motorFrom(plate, growing.likely),
    propeller: coefficients,
    count,
    airDensity: air.value.density,
    openVoltage: source.voltage,
    sourceResistance: source.resistance,
    otherPower,
  };
  // Controllers brake unless a script says that they don't.
  const brakes = !own.isSet('esc.drive.brake') || own.flag('esc.drive.brake') !== false;
  const carried = {
    drive,
    weight: mass * gravity,
    pitch,
    brakes,
    throttle: throttleOf(own, fullVoltage(own)),
  };
  return {
    value: doubtful(carried, [...doubtsOf(spread, source.doubt), idleDoubt(plate)]),
    assumed: [...air.assumed, ...assumed],
  };
});

/** What a full pack has without a load, V; null where that is not known. */
function fullVoltage(view: CraftView): number | null {
  const [cells, cell] = [packCount(view, 'cells'), fullCell(view)];
  return cells === null || cell === null ? null : cells * cell;
}

/** With a pack fresh from the charger: limits are met with it first. */
export const carriedOnFull = model<[], Doubtful<Carried>>('drive with a full pack', (own) => {
  const carried = carriedBy(own);
  const voltage = fullVoltage(own);
  if (carried === null || voltage === null) return null;
  return { ...carried, value: changedIn(carried.value, (one) => withVoltage(one, voltage)) };
});

/** With a pack that shows the landing voltage in the hover: what is left to stop a descent with. */
export const carriedToLand = model<[], Doubtful<Carried>>('drive with a pack due to land', (own) => {
  const carried = carriedBy(own);
  const [cells, given] = [packCount(own, 'cells'), own.quantity('power.land-cell')];
  const usual = chemistryInView(own)?.land;
  const cell = given ?? (usual === undefined ? null : inBase(usual));
  if (carried === null || cells === null || cell === null || cell <= 0) return null;
  return {
    value: changedIn(carried.value, (one) =>
      dueToLand(one, cells * cell, fullVoltage(own) ?? Number.POSITIVE_INFINITY),
    ),
    assumed: [...carried.assumed, ...(given === null ? [`landing at ${own.short(cell, 'V')} a cell`] : [])],
  };
});

function withVoltage(carried: Carried, openVoltage: number): Carried {
  return { ...carried, drive: { ...carried.drive, openVoltage } };
}

/** So much above the landing voltage as the hover's current takes off, and never above the most that a full one has. */
function dueToLand(carried: Carried, voltage: number, most: number): Carried {
  const { drive, weight } = carried;
  const sag = drive.sourceResistance * (powerForThrust(drive, weight) / voltage);
  return withVoltage(carried, Math.min(most, voltage + sag));
}

function idleDoubt(plate: MotorPlate): Doubt<Carried> {
  const withShare = (share: number) => (model: Carried) => ({
    ...model,
    drive: { ...model.drive, motor: motorFrom(plate, share) },
  });
  return { low: withShare(growing.low), high: withShare(growing.high) };
}

function doubtsOf(spread: PropellerInUse['spread'], sourceDoubt: number): readonly Doubt<Carried>[] {
  const changed = (model: Carried, change: Partial<Drive>): Carried => ({
    ...model,
    drive: { ...model.drive, ...change },
  });
  return [
    doubtOf(spread.thrust, (model, by) => {
      const { propeller } = model.drive;
      const thrustCoefficient = by * propeller.thrustCoefficient;
      return changed(model, { propeller: { ...propeller, thrustCoefficient } });
    }),
    doubtOf(spread.power, (model, by) => {
      const { propeller } = model.drive;
      const powerCoefficient = by * propeller.powerCoefficient;
      return changed(model, { propeller: { ...propeller, powerCoefficient } });
    }),
    doubtOf(sourceDoubt, (model, by) =>
      changed(model, { sourceResistance: by * model.drive.sourceResistance }),
    ),
    // Winding and controller: the printed figure is that of the winding alone.
    doubtOf(0.15, (model, by) => {
      const { motor } = model.drive;
      return changed(model, { motor: { ...motor, resistance: by * motor.resistance } });
    }),
  ];
}
