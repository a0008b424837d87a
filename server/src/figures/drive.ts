import { inBase } from '../catalog/known-parameter';
import type { CraftView } from '../craft/view';
import { gravity } from '../physics/atmosphere';
import { type Drive, powerForThrust } from '../physics/drive';
import { coaxialFactors, coaxialThrust } from '../physics/mixing';
import { estimatePropeller } from '../physics/propeller-estimate';
import { airOf } from './air';
import { isCoaxial, motorPlaces } from './layouts';
import { flyingMass } from './mass';
import { model } from './model';
import { growing, type MotorPlate, motorFrom, motorPlateOf } from './motor-plate';
import { chemistryInView, fullCell, nominalCell, packCount, packQuantity } from './pack-in-view';
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
  const propeller = inWash(own, propellerOf(own, assumed), assumed);
  const source = sourceOf(own, assumed);
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
    value: changedIn(carried.value, (one) => dueToLand(one, cells * cell)),
    assumed: [...carried.assumed, ...(given === null ? [`landing at ${own.short(cell, 'V')} a cell`] : [])],
  };
});

function withVoltage(carried: Carried, openVoltage: number): Carried {
  return { ...carried, drive: { ...carried.drive, openVoltage } };
}

/** So much above the landing voltage as the hover's current takes off. */
function dueToLand(carried: Carried, voltage: number): Carried {
  const { drive, weight } = carried;
  return withVoltage(carried, voltage + drive.sourceResistance * (powerForThrust(drive, weight) / voltage));
}

/** Share by which a coefficient that the maker or the pilot gives may be off. Common practice. */
const givenSpread = 0.08;

const bare = { thrust: 1, doubt: 0, words: '' };

/**
 * What surrounds a propeller makes of its thrust in the hover, as a ratio, and how far that may be off. A duct: Li,
 * Yonezawa and Liu, Drones 5(3) 101 (2021), computed, 7 % more as built and up to 25 % when shaped for it; a ring
 * keeps a gap to the tips, and no gain is claimed for it (J. Pereira, University of Maryland, 2008, secondary).
 */
const guards: ReadonlyMap<string, typeof bare> = new Map([
  [
    'ring',
    { thrust: 1, doubt: 0.05, words: 'no gain of thrust from the rings around the propellers, and no loss' },
  ],
  ['duct', { thrust: 1.07, doubt: 0.1, words: '7 % more thrust in the hover from the ducts' }],
]);

function propellerOf(view: CraftView, assumed: string[]) {
  const diameter = view.quantity('prop.diameter');
  const pitch = view.quantity('prop.pitch');
  const blades = view.count('prop.blades');
  if (diameter === null || pitch === null || blades === null) return null;
  const measured = view.catalog.propellers.map((one) => ({
    ...one,
    diameter: inBase(one.diameter),
    pitch: inBase(one.pitch),
  }));
  const estimated = estimatePropeller(measured, { diameter, pitch, blades });
  const thrust = view.quantity('prop.thrust-coefficient');
  const power = view.quantity('prop.power-coefficient');
  if (thrust === null) assumed.push('thrust coefficient of like propellers in an open data set');
  if (power === null) assumed.push('power coefficient of like propellers in an open data set');
  if ((thrust === null || power === null) && (blades < 2 || blades > 4))
    assumed.push(`what ${blades} ${blades === 1 ? 'blade does' : 'blades do'}, carried on from two to four`);
  const around = guards.get(view.word('prop.guard') ?? 'none') ?? bare;
  if (thrust === null && around.words !== '') assumed.push(around.words);
  return {
    diameter,
    pitch,
    thrustCoefficient: thrust ?? around.thrust * estimated.thrust.likely,
    powerCoefficient: power ?? estimated.power.likely,
    spread: {
      thrust: thrust === null ? Math.hypot(estimated.thrust.spread, around.doubt) : givenSpread,
      power: power === null ? estimated.power.spread : givenSpread,
    },
  };
}

/** Above each other, propellers lift less for the same power: a mean of the upper and the lower one. */
function inWash(
  view: CraftView,
  propeller: ReturnType<typeof propellerOf>,
  assumed: string[],
): ReturnType<typeof propellerOf> {
  if (propeller === null || !isCoaxial(view.word('craft.layout') ?? '')) return propeller;
  const { low, likely, high } = coaxialFactors;
  const kept = coaxialThrust(likely);
  const doubt = (coaxialThrust(low) - coaxialThrust(high)) / (2 * kept);
  assumed.push(`${Math.round(100 * kept)} % of the thrust side by side, for propellers above each other`);
  return {
    ...propeller,
    thrustCoefficient: kept * propeller.thrustCoefficient,
    spread: { ...propeller.spread, thrust: Math.hypot(propeller.spread.thrust, doubt) },
  };
}

/**
 * Resistance times charge of one cell, in ohm times ampere hour: packs for full throttle and packs for range.
 * Common practice, from what chargers show of fresh packs.
 */
const cellResistance = { quick: 0.007, lasting: 0.06 };
/** A pack that may be emptied faster than this, in 1/s, is one for full throttle: 20 C. */
const quickRating = 20 / 3600;

function sourceOf(view: CraftView, assumed: string[]) {
  const cells = packCount(view, 'cells');
  const nominal = nominalCell(view);
  const charge = packQuantity(view, 'capacity');
  if (cells === null || nominal === null || charge === null || charge <= 0) return null;
  const given = packQuantity(view, 'resistance');
  if (given !== null && given > 0) return { voltage: cells * nominal, resistance: given, doubt: 0.2 };
  const usual = usualPackResistance(view);
  if (usual === null) return null;
  assumed.push(`a pack resistance of ${view.short(usual, 'mohm')}, as usual for its kind`);
  return { voltage: cells * nominal, resistance: usual, doubt: 0.5 };
}

/** What a fresh pack of the kind in view has from plug to plug, in ohm; null where its cells or charge are not known. */
export function usualPackResistance(view: CraftView): number | null {
  const cells = packCount(view, 'cells');
  const charge = packQuantity(view, 'capacity');
  if (cells === null || charge === null || charge <= 0) return null;
  const rating = packQuantity(view, 'discharge') ?? 0;
  const isQuick = rating >= quickRating && chemistryInView(view)?.name !== 'li-ion';
  return (cells * (isQuick ? cellResistance.quick : cellResistance.lasting)) / (charge / 3600);
}

/** Watts that the board, the receiver and the picture take of a small craft. Common practice. */
const usualOtherPower = 5;

function otherPowerOf(view: CraftView, voltage: number, assumed: string[]): number {
  const standing = view.quantity('power.standing-current');
  if (standing !== null) return standing * voltage;
  assumed.push(`${usualOtherPower} W for everything but the motors`);
  return usualOtherPower;
}

function idleDoubt(plate: MotorPlate): Doubt<Carried> {
  const withShare = (share: number) => (model: Carried) => ({
    ...model,
    drive: { ...model.drive, motor: motorFrom(plate, share) },
  });
  return { low: withShare(growing.low), high: withShare(growing.high) };
}

type Share = { readonly thrust: number; readonly power: number };

function doubtsOf(spread: Share, sourceDoubt: number): readonly Doubt<Carried>[] {
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
