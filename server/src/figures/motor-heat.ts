import type { CraftView } from '../craft/view';
import { type DriveState, stateForThrust } from '../physics/drive';
import {
  adiabaticTime,
  copperGrowth,
  copperLoss,
  copperSpecificHeat,
  ironLoss,
  printedAt,
} from '../physics/motor-heat';
import {
  type Heating,
  resistanceToAir,
  settledWarmth,
  type TwoBodies,
  type Warmth,
  warmthAfter,
} from '../physics/two-body-heat';
import { toBase, unitOf } from '../units/unit';
import { type Carried, withDrive } from './carried';
import { carriedBy } from './drive';
import { full } from './drive-states';
import { flyingStyleOf, powerMultiple } from './flying-style';
import { type BellReading, bellReadings } from './hot-motors';
import { model } from './model';
import { fullVoltage } from './pack-in-view';
import {
  changedIn,
  type Doubt,
  type Doubtful,
  doubtOf,
  type Estimate,
  eitherWay,
  waysOf,
  withDoubts,
  withinFactor,
} from './uncertain';
import { copperShare, heatedMass } from './winding-mass';

/** A drive with windings that are warm from flying. */
export interface Warm {
  /** With a pack half used, and fresh from the charger. */
  readonly halfUsed: Carried;
  readonly onFull: Carried;
  /** Of a winding in flight, where no flight has told, K. */
  readonly warm: number;
}

/** The same with what the heat of its motors goes into. */
export interface Heated extends Warm {
  readonly heat: MotorHeat;
}

/** Of one motor; SI. */
export interface MotorHeat {
  readonly mass: number;
  /** Share of its mass that is copper. */
  readonly copper: number;
  /** From the winding to bell and housing, K/W. */
  readonly within: number;
  /** The most that the winding's insulation bears, K. */
  readonly limit: number;
  /** Mean power of the flying, of that of the hover. */
  readonly effort: number;
  /** How many times as far above the air as it was read off the bell was in flight. */
  readonly bell: number;
}

/**
 * From winding to housing, K/W: 1.07 of an outrunner in a leg (University of Michigan), 1.93 and 2.46 of motors in a
 * robot and of a data sheet (PR2; maxon EC 13). Of small outrunners nothing was found: the span reaches well beyond.
 */
const within = { likely: 2, low: 0.8, high: 5 };

const celsius = (degrees: number) => toBase(degrees, unitOf('degC'));

/** As warm as a hand just bears, give or take. Common practice. */
const warm = { likely: celsius(60), low: celsius(40), high: celsius(80) };

/** Where no insulation is told: classes B, F and H of IEC 60085. */
const insulation = { likely: celsius(155), low: celsius(130), high: celsius(180) };

/** From flying gently to racing, of the hover’s power: where nothing says how it is flown. */
const anyEffort = { likely: 1.8, low: 1.1, high: 4 };

/** Mean power of the flying, of the hover’s: by its style where that is known. */
function effortOf(view: CraftView, carried: Carried, assumed: string[]): Estimate {
  const isTold = view.isSet('craft.flying') || view.isSet('craft.purpose');
  const style = isTold ? flyingStyleOf(view, assumed) : null;
  const top = full(carried);
  if (style !== null && top !== null)
    return powerMultiple(style, (carried.drive.count * top.thrust) / carried.weight);
  assumed.push('flying at one to four times the power of the hover');
  return anyEffort;
}

/** A shiny bell, half a minute after landing, out of the propeller's wind. Common practice. */
const bell = eitherWay(1.2);

/** Iron, aluminium, magnets and steel together, J/(kg K). Source: Engineering ToolBox, Metals – Specific Heats. */
const restSpecificHeat = 500;

/** What its motors lose needs no more than the drive; null where that is not known. */
export const warmBy = model<[], Doubtful<Warm>>('warm motors', (own) => {
  const carried = carriedBy(own);
  const voltage = fullVoltage(own);
  if (carried === null || voltage === null) return null;
  const whole = changedIn(carried.value, (halfUsed) => ({
    halfUsed,
    onFull: withDrive(halfUsed, { openVoltage: voltage }),
    warm: warm.likely,
  }));
  const doubt = doubtOf('how warm the winding is from flying', waysOf(warm), (one: Warm, by) => ({
    ...one,
    warm: by * one.warm,
  }));
  return { value: withDoubts(whole, [doubt]), assumed: carried.assumed };
});

/** How motors warm; null where the drive is not known, or not how much copper they have. */
const heatedBy = model<[], Doubtful<Heated>>('motors’ heat', (own) => {
  const assumed: string[] = [];
  const known = warmBy(own);
  const mass = known === null ? null : heatedMass(own, assumed);
  const limit = insulationOf(own, assumed);
  if (known === null || mass === null || limit === null) return null;
  const effort = effortOf(own, known.value.likely.halfUsed, assumed);
  const { likely, low, high } = copperShare;
  const share = (value: number) => own.short(value, '%');
  assumed.push(`copper that is ${share(likely)} (${share(low)} to ${share(high)}) of a motor’s mass`);
  const heat: MotorHeat = {
    mass: mass.likely,
    copper: likely,
    within: within.likely,
    limit: limit.likely,
    effort: effort.likely,
    bell: 1,
  };
  return {
    value: withDoubts(
      changedIn(known.value, (one) => ({ ...one, heat })),
      [
        spread('the motors’ mass', 'mass', mass),
        spread('the copper’s share of it', 'copper', copperShare),
        spread('how well the winding gives its heat away', 'within', within),
        spread('what the insulation bears', 'limit', limit),
        spread('how hard it is flown', 'effort', effort),
        spread('what a reading tells of the bell', 'bell', { likely: 1, ...bell }),
      ],
    ),
    assumed: [...known.assumed, ...assumed],
  };
});

function spread(of: string, what: keyof MotorHeat, estimate: Estimate): Doubt<Heated> {
  return doubtOf(of, waysOf(estimate), (heated, by) => ({
    ...heated,
    heat: { ...heated.heat, [what]: by * heated.heat[what] },
  }));
}

/** What is taken for it in checks, K. */
export const usualInsulation = insulation.likely;

/** What the winding’s insulation bears, K; null where what the script says can't be read. */
function insulationOf(view: CraftView, assumed: string[]): Estimate | null {
  const path = 'motor.insulation-limit';
  if (view.isSet(path)) {
    const limit = view.quantity(path);
    return limit === null ? null : withinFactor(limit, 1);
  }
  const text = (value: number) => view.short(value, 'degC');
  const { likely, low, high } = insulation;
  assumed.push(`insulation that bears ${text(likely)} (${text(low)} to ${text(high)})`);
  return insulation;
}

/** What one motor turns into heat, W: in its copper at a temperature (K), and in its iron and bearings. */
export function lossesOf({ drive }: Carried, { motor }: DriveState, temperature: number) {
  return {
    copper: copperLoss(drive.motor.resistance, motor.current, temperature),
    iron: ironLoss(drive.motor, motor.speed),
  };
}

/** What one speed controller loses, W. */
export function controllerLossOf({ drive }: Carried, { motor, packVoltage }: DriveState): number {
  return drive.controllerLoss * packVoltage * motor.current;
}

/** A state whose power is the mean of the flying: by momentum theory power goes with thrust to 3/2. */
function meanState({ halfUsed, heat }: Heated): DriveState | null {
  const thrust = halfUsed.weight * heat.effort ** (2 / 3);
  return stateForThrust(halfUsed.drive, thrust) ?? full(halfUsed);
}

function bodiesOf({ mass, copper, within: inside }: MotorHeat): Omit<TwoBodies, 'toAir'> {
  return {
    winding: mass * copper * copperSpecificHeat,
    housing: mass * (1 - copper) * restSpecificHeat,
    within: inside,
  };
}

function heatingIn(carried: Carried, state: DriveState, air: number): Heating {
  const { copper, iron } = lossesOf(carried, state, printedAt);
  return { winding: { loss: copper, at: printedAt, growth: copperGrowth }, housing: iron, air };
}

/** How warm winding and bell are as the craft is flown, and what cools them. */
export interface AsFlown extends Warmth {
  readonly bodies: TwoBodies;
}

/** A winding that never settles is told as warm as it is after so long, s. */
const forEver = 3600;

/**
 * In air of a temperature (K), by what was read off the bell on flights: that tells how well air cools the housing, and
 * nothing else. Null without a reading, and where no cooling would explain one.
 */
function asFlown(heated: Heated, readings: readonly BellReading[], air: number): AsFlown | null {
  const state = meanState(heated);
  if (state === null || readings.length === 0) return null;
  const bodies = bodiesOf(heated.heat);
  const found = readings.map((one) =>
    resistanceToAir(bodies, heatingIn(heated.halfUsed, state, one.air), {
      housing: one.air + heated.heat.bell * (one.bell - one.air),
      seconds: one.seconds,
    }),
  );
  const logs = found.flatMap((one) => (one === null ? [] : Math.log(one)));
  if (logs.length === 0) return null;
  const toAir = Math.exp(logs.reduce((sum, one) => sum + one, 0) / logs.length);
  const whole = { ...bodies, toAir };
  const heating = heatingIn(heated.halfUsed, state, air);
  const seconds = Math.max(...readings.map((one) => one.seconds));
  const settled = Number.isFinite(seconds) ? null : settledWarmth(whole, heating);
  const cold = { winding: air, housing: air };
  return {
    ...(settled ?? warmthAfter(whole, heating, cold, Math.min(forEver, seconds))),
    bodies: whole,
  };
}

/** Motors with what flights have told of their cooling. */
export interface FlownMotors extends Heated {
  /** Of the day that figures are computed for, K. */
  readonly air: number;
  /** Null where no flight has told. */
  readonly flown: AsFlown | null;
}

export const flownBy = model<[], Doubtful<FlownMotors>>('motors as flown', (own) => {
  const known = heatedBy(own);
  const air = own.quantity('craft.air-temperature');
  if (known === null || air === null) return null;
  const readings = bellReadings(own);
  const value = changedIn(known.value, (one) => ({ ...one, air, flown: asFlown(one, readings, air) }));
  return { value, assumed: known.assumed };
});

/** As flown, after full throttle has been held for a time (s), with a full pack. */
export function afterFullThrottle({ onFull, flown, air }: FlownMotors, seconds: number): Warmth | null {
  const state = full(onFull);
  if (state === null || flown === null) return null;
  return warmthAfter(flown.bodies, heatingIn(onFull, state, air), flown, seconds);
}

/** How warm a winding is before full throttle, K: as flights have told, else as flying makes it. */
export function warmBefore({ flown, warm: usual }: FlownMotors): number {
  return flown?.winding ?? usual;
}

/**
 * For how long (s) full throttle with a full pack is surely borne: by a winding that is warm from flying and keeps all
 * of its heat, up to what its insulation bears. Real ones bear it longer.
 */
export function boundOf(flown: FlownMotors): number | null {
  const { onFull, heat } = flown;
  const state = full(onFull);
  if (state === null) return null;
  const { copper } = lossesOf(onFull, state, printedAt);
  return adiabaticTime({ capacity: bodiesOf(heat).winding, loss: copper }, warmBefore(flown), heat.limit);
}
