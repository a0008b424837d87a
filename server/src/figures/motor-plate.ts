import type { CraftView } from '../craft/view';
import { type Motor, withIdle } from '../physics/motor';
import { type Bench, benchOf, benchUnderLoad } from './motor-bench';
import { type EstimatedWinding, estimatedIdleCurrent, estimatedWinding } from './motor-size';
import { nominalCell, packCount } from './pack-in-view';
import { type Estimate, inProportion, withinFactor } from './uncertain';

/** What a motor's data sheet tells, or what its size lets one expect. */
export interface MotorPlate {
  readonly speedConstant: number;
  /** Of the winding, ohm: what becomes heat. */
  readonly resistance: Estimate;
  /** What throttle and speed see: ohm, and rad/s a volt. */
  readonly underLoad: { readonly resistance: Estimate; readonly speedConstant: Estimate };
  /** Without a load, A; and at which voltage, V. */
  readonly current: Estimate;
  readonly voltage: number;
}

/** Factor by which a written resistance of the winding may be off. Common practice. */
const writtenFactor = 1.15;

/**
 * Printed kv is rounded: the torque of a current goes with it. Bench tables with a measured torque part from it by one
 * to twelve hundredths, in which is what their controllers lose (Seoul National University). How much slower the motors
 * turn under a load is a doubt of its own.
 */
export const kvFactor = 1.04;

/** Half of what a motor draws without a load grows with its speed; it may be none of it, or all. From memory. */
export const growing = { low: 0, likely: 0.5, high: 1 };

/** Null where the script does not tell it all, or it can't be. `assumed`: gets what was assumed for it, in words. */
export function motorPlateOf(view: CraftView, assumed: string[]): MotorPlate | null {
  const speedConstant = view.quantity('motor.kv');
  const bench = benchOf(view);
  const winding = windingOf(view, bench, assumed);
  const current = idleCurrentOf(view, bench, assumed);
  const slower = view.catalog.motorLaws?.underLoad.kv;
  if (speedConstant === null || winding === null || current === null || slower === undefined) return null;
  const { resistance } = winding;
  const voltage = idleVoltage(view, assumed);
  // Nothing turns where the resistance takes all of it: that is told as a wasteful motor.
  if (voltage === null || voltage <= resistance.likely * current.likely) return null;
  const usual = { resistance: winding.underLoad, speedConstant: inProportion(slower, speedConstant) };
  const underLoad = onStand(bench, resistance.likely, usual, assumed) ?? usual;
  return { speedConstant, resistance, underLoad, current, voltage };
}

function windingOf(view: CraftView, bench: Bench | null, assumed: string[]): EstimatedWinding | null {
  if (!view.isSet('motor.resistance'))
    return benchWinding(view, bench, assumed) ?? estimatedWinding(view, assumed);
  const likely = view.quantity('motor.resistance');
  if (likely === null) return null;
  assumed.push('up to twice the winding’s resistance for what the speed loses under a load');
  return { resistance: withinFactor(likely, writtenFactor), underLoad: onceToTwice(likely) };
}

function onceToTwice(resistance: number): Estimate {
  return { likely: resistance * Math.SQRT2, low: resistance, high: 2 * resistance };
}

/** 90 % lie within so many standard errors. */
const ninety = 1.645;

function benchWinding(view: CraftView, bench: Bench | null, assumed: string[]): EstimatedWinding | null {
  if (bench === null || bench.power === null) return null;
  const { resistance, doubt } = bench.power;
  const factor = Math.max(writtenFactor, Math.exp(ninety * doubt));
  assumed.push(`a winding of ${view.short(resistance, 'mohm')}, by the watts of the maker’s table`);
  return { resistance: withinFactor(resistance, factor), underLoad: onceToTwice(resistance) };
}

/** What the volts of the maker's table lose at full throttle, and with which kv: known far better than without. */
function onStand(
  bench: Bench | null,
  resistance: number,
  usual: MotorPlate['underLoad'],
  assumed: string[],
): MotorPlate['underLoad'] | null {
  const found = bench === null ? null : benchUnderLoad(bench, resistance, usual.speedConstant.likely);
  if (found === null) return null;
  assumed.push('what the speed loses under a load, by the maker’s table at full throttle');
  return {
    resistance: withinFactor(found.resistance, standFactors.resistance),
    speedConstant: withinFactor(found.speedConstant, standFactors.speed),
  };
}

/** Resistance and kv move together to meet the row: what is left of their doubts by themselves. Common practice. */
const standFactors = { resistance: 1.2, speed: 1.02 };

function idleCurrentOf(view: CraftView, bench: Bench | null, assumed: string[]): Estimate | null {
  if (view.isSet('motor.idle-current')) {
    const likely = view.quantity('motor.idle-current');
    return likely === null ? null : withinFactor(likely, 1);
  }
  const speedConstant = view.quantity('motor.kv');
  if (bench === null || bench.power === null || speedConstant === null)
    return estimatedIdleCurrent(view, assumed);
  const likely = bench.power.friction * speedConstant;
  assumed.push(`a no-load current of ${view.short(likely, 'A')}, by the watts of the maker’s table`);
  return withinFactor(likely, frictionFactor);
}

/** Friction by a table takes in what ripple and meters cost at the least throttle. Common practice. */
const frictionFactor = 1.5;

/** The motor of such a plate, with a share of its current without a load that grows with its speed. */
export function motorFrom(plate: MotorPlate, share: number): Motor {
  const { speedConstant, resistance, underLoad, current, voltage } = plate;
  const motor = withIdle(
    { speedConstant, resistance: resistance.likely },
    { current: current.likely, voltage, growing: share },
  );
  const [volts, speed] = [underLoad.resistance.likely, underLoad.speedConstant.likely];
  return { ...motor, underLoad: { resistance: volts, speedConstant: speed } };
}

/** Small motors are measured with what they are flown with. */
function idleVoltage(view: CraftView, assumed: string[]): number | null {
  const path = 'motor.idle-current-voltage';
  if (view.isSet(path)) return view.quantity(path);
  const usual = view.catalog.parameter(path)?.assumed ?? null;
  const [cells, cell] = [packCount(view, 'cells'), nominalCell(view)];
  if (usual === null || cells === null || cell === null) return null;
  const voltage = Math.min(usual, cells * cell);
  assumed.push(`the no-load current at ${view.short(voltage, 'V')}`);
  return voltage;
}

/** The speed at which its current without a load was measured, rad/s. */
export function idleSpeed({ speedConstant, resistance, current, voltage }: MotorPlate): number {
  return speedConstant * (voltage - resistance.likely * current.likely);
}
