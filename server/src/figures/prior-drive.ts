import { gravity } from '../physics/atmosphere';
import type { Drive } from '../physics/drive';
import { airOf } from './air';
import type { Carried } from './carried';
import { controllerLoss } from './controller-loss';
import { driveDoubts } from './drive-doubts';
import { motorPlaces } from './layouts';
import { flyingMass } from './mass';
import { model } from './model';
import { growing, motorFrom, motorPlateOf } from './motor-plate';
import { fullVoltage } from './pack-in-view';
import { otherPowerOf, type PackWarmth, packSource } from './pack-source';
import { propellerInUse } from './propeller-in-use';
import { throttleOf } from './throttle';
import type { Doubt } from './uncertain';

/** A drive as its parts let one expect it, before any flight, with all that is not known of it. */
export interface PriorDrive {
  readonly carried: Carried;
  readonly doubts: readonly Doubt<Carried>[];
}

/** With a pack that is half used: most of a flight is flown with one. */
export const priorDrive = model<[warmth: PackWarmth], PriorDrive>(
  'drive before any flight',
  (own, warmth) => {
    const assumed: string[] = [];
    const plate = motorPlateOf(own, assumed);
    const propeller = propellerInUse(own, assumed);
    const source = packSource(own, assumed, warmth);
    const air = airOf(own);
    const mass = flyingMass(own);
    const count = motorPlaces(own.word('craft.layout') ?? '')?.length;
    if (plate === null || propeller === null || source === null || air === null) return null;
    if (mass === null || count === undefined) return null;
    const { pitch, spread, ...coefficients } = propeller;
    const otherPower = otherPowerOf(own, source.voltage, mass, assumed);
    assumed.push('speed controllers that lose a little of what the motors get');
    const resistance = (source.cold?.resistance.likely ?? 1) * source.resistance.likely;
    const drive: Drive = {
      motor: motorFrom(plate, growing.likely),
      propeller: coefficients,
      count,
      airDensity: air.value.density,
      openVoltage: source.voltage,
      sourceResistance: resistance + source.leads.likely,
      otherPower: otherPower.likely,
      controllerLoss: controllerLoss.likely,
    };
    // Controllers brake unless a script says that they don't.
    const brakes = !own.isSet('esc.drive.brake') || own.flag('esc.drive.brake') !== false;
    const carried = {
      drive,
      weight: mass * gravity,
      charge: (source.cold?.charge.likely ?? 1) * source.charge.likely,
      pack: {
        cells: source.cells,
        atRest: source.atRest,
        full: source.full,
        resistance,
        inFlight: source.inFlight.likely,
        leads: source.leads.likely,
      },
      pitch,
      brakes,
      throttle: throttleOf(own, fullVoltage(own)),
    };
    return {
      value: { carried, doubts: driveDoubts({ propeller: spread, source, plate, otherPower }) },
      assumed: [...air.assumed, ...assumed],
    };
  },
);
