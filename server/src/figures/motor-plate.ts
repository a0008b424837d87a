import type { CraftView } from '../craft/view';
import { type Motor, withIdle } from '../physics/motor';
import { nominalCell, packCount } from './pack-in-view';

/** What a motor's data sheet tells. */
export interface MotorPlate {
  readonly speedConstant: number;
  readonly resistance: number;
  /** Without a load, A; and at which voltage, V. */
  readonly current: number;
  readonly voltage: number;
}

/** Half of what a motor draws without a load grows with its speed; it may be none of it, or all. From memory. */
export const growing = { low: 0, likely: 0.5, high: 1 };

/** Null where the script does not tell it all, or it can't be. `assumed`: gets what was assumed for it, in words. */
export function motorPlateOf(view: CraftView, assumed: string[]): MotorPlate | null {
  const speedConstant = view.quantity('motor.kv');
  const resistance = view.quantity('motor.resistance');
  const current = view.quantity('motor.idle-current');
  if (speedConstant === null || resistance === null || current === null) return null;
  const voltage = idleVoltage(view, assumed);
  // Nothing turns where the resistance takes all of it: that is told as a wasteful motor.
  if (voltage === null || voltage <= resistance * current) return null;
  return { speedConstant, resistance, current, voltage };
}

/** The motor of such a plate, with a share of its current without a load that grows with its speed. */
export function motorFrom({ speedConstant, resistance, current, voltage }: MotorPlate, share: number): Motor {
  return withIdle({ speedConstant, resistance }, { current, voltage, growing: share });
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
