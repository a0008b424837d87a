import type { CraftView } from '../craft/view';
import { type DriveState, stateAtThrottle, stateForThrust } from '../physics/drive';
import { motorEfficiency } from '../physics/motor';
import { discLoading, pitchSpeed, tipSpeed } from '../physics/propeller';
import { airOf } from './air';
import { type Carried, carriedBy } from './drive';
import type { Computed, FigureSource } from './figure';
import { packPath, packQuantity } from './pack-in-view';
import { estimate } from './uncertain';

const perMinute = (2 * Math.PI) / 60;

/** Settings that all of these hang on. */
const inputs = ['motor.kv', 'prop.diameter', 'prop.pitch', 'craft.mass', 'pack.<name>.cells'];

/** Many figures ask for the same state of the same model. */
const hovers = new WeakMap<Carried, DriveState | null>();
const fulls = new WeakMap<Carried, DriveState | null>();

/** Hovering: all propellers together carry the weight; null where pack and motors can't. */
export function hovering(carried: Carried): DriveState | null {
  const known = hovers.get(carried);
  if (known !== undefined) return known;
  const state = stateForThrust(carried.drive, carried.weight);
  hovers.set(carried, state);
  return state;
}

/** Full throttle, as far as the script lets it go; null where that can't be read. */
export function full(carried: Carried): DriveState | null {
  const known = fulls.get(carried);
  if (known !== undefined) return known;
  const state = carried.limit === null ? null : stateAtThrottle(carried.drive, carried.limit);
  fulls.set(carried, state);
  return state;
}

interface DriveFigure {
  readonly id: string;
  readonly title: string;
  readonly unit: string;
  readonly hint?: NonNullable<FigureSource['hint']>;
  /** In the unit. */
  readonly measure: (carried: Carried, view: CraftView) => number | null;
  readonly why: (carried: Carried, view: CraftView) => string;
}

const driveFigureList: readonly DriveFigure[] = [
  {
    id: 'hover-throttle',
    title: 'Throttle in the hover',
    unit: '%',
    hint: { at: ['pack.<name>.cells'], words: (figure) => `hovers at ${figure}` },
    measure: (carried) => percent(hovering(carried)?.throttle),
    why: (carried, view) =>
      `${voltsOf(hovering(carried)?.motor.voltage, view)} at the motors of ${voltsOf(hovering(carried)?.packVoltage, view)} from the pack`,
  },
  {
    id: 'thrust-to-weight',
    title: 'Thrust-to-weight at full throttle',
    unit: '',
    measure: (carried) => over(allThrust(carried) ?? undefined, carried.weight),
    why: (carried, view) =>
      `${view.short(allThrust(carried) ?? 0, 'N')} / ${view.short(carried.weight, 'N')}`,
  },
  {
    id: 'minutes-to-landing',
    title: 'Hovering time until the reserve is reached',
    unit: 'min',
    hint: { at: ['pack.<name>.capacity'], words: (figure) => `hovers ${figure}` },
    measure: (carried, view) => minutes(carried, view, 'power.charge-reserve'),
    why: (carried, view) => minutesText(carried, view, 'power.charge-reserve'),
  },
  {
    id: 'full-current',
    title: 'Current from the pack at full throttle',
    unit: 'A',
    measure: (carried) => full(carried)?.packCurrent ?? null,
    why: (carried, view) =>
      `${carried.drive.count} × ${ampsOf(full(carried)?.motor.current, view)} + ${view.short(carried.drive.otherPower, 'W')} for the rest`,
  },
  {
    id: 'hover-speed',
    title: 'Motor speed in the hover',
    unit: 'rpm',
    measure: (carried) => over(hovering(carried)?.motor.speed, perMinute),
    why: ({ drive, weight }, view) =>
      `sqrt(T / (CT ρ D^4)) with T = ${view.short(weight / drive.count, 'N')}, CT = ${round(drive.propeller.thrustCoefficient)}, ρ = ${round(drive.airDensity)} kg/m^3`,
  },
  {
    id: 'hover-current',
    title: 'Current from the pack in the hover',
    unit: 'A',
    measure: (carried) => hovering(carried)?.packCurrent ?? null,
    why: (carried, view) =>
      `${carried.drive.count} × ${wattsOf(hovering(carried), view)} + ${view.short(carried.drive.otherPower, 'W')}, at ${voltsOf(hovering(carried)?.packVoltage, view)}`,
  },
  {
    id: 'hover-power',
    title: 'Power from the pack in the hover',
    unit: 'W',
    measure: (carried) => productOf(hovering(carried)),
    why: (carried, view) =>
      `${voltsOf(hovering(carried)?.packVoltage, view)} × ${ampsOf(hovering(carried)?.packCurrent, view)}`,
  },
  {
    id: 'hover-motor-efficiency',
    title: 'Share of the power that reaches the propellers, in the hover',
    unit: '%',
    measure: (carried) => {
      const state = hovering(carried);
      return state === null ? null : 100 * motorEfficiency(carried.drive.motor, state.motor);
    },
    why: (carried, view) =>
      `(I - I0) Ω / (K V I) at ${ampsOf(hovering(carried)?.motor.current, view)} a motor`,
  },
  {
    id: 'full-speed',
    title: 'Motor speed at full throttle',
    unit: 'rpm',
    measure: (carried) => over(full(carried)?.motor.speed, perMinute),
    why: (carried, view) =>
      `torque of the motor at ${voltsOf(full(carried)?.packVoltage, view)} and of the propeller meet there`,
  },
  {
    id: 'full-thrust',
    title: 'Thrust at full throttle',
    unit: 'N',
    measure: allThrust,
    why: ({ drive }) => `${drive.count} × CT ρ n^2 D^4`,
  },
  {
    id: 'full-motor-current',
    title: 'Current of one motor at full throttle',
    unit: 'A',
    measure: (carried) => full(carried)?.motor.current ?? null,
    why: (carried, view) => `(V - Ω/K) / R at ${voltsOf(full(carried)?.motor.voltage, view)}`,
  },
  {
    id: 'full-sag',
    title: 'Voltage that the pack loses at full throttle',
    unit: 'V',
    measure: (carried) => {
      const state = full(carried);
      return state === null ? null : carried.drive.openVoltage - state.packVoltage;
    },
    why: (carried, view) =>
      `${view.short(carried.drive.sourceResistance, 'mohm')} × ${ampsOf(full(carried)?.packCurrent, view)}`,
  },
  {
    id: 'tip-speed',
    title: 'Speed of the blade tips at full throttle',
    unit: 'm/s',
    measure: tipsOf,
    why: () => 'π D n',
  },
  {
    id: 'tip-mach',
    title: 'Blade tips at full throttle, of the speed of sound',
    unit: '%',
    measure: (carried, view) => {
      const sound = airOf(view)?.value.sound;
      const tip = tipsOf(carried);
      return sound === undefined || tip === null ? null : (100 * tip) / sound;
    },
    why: (_, view) => `tip speed / ${view.short(airOf(view)?.value.sound ?? 0, 'm/s')}`,
  },
  {
    id: 'pitch-speed',
    title: 'Pitch speed at full throttle',
    unit: 'm/s',
    measure: (carried) => {
      const state = full(carried);
      return state === null ? null : pitchSpeed(carried.pitch, state.motor.speed);
    },
    why: ({ pitch }, view) => `${view.short(pitch, 'in')} × turns a second`,
  },
  {
    id: 'disc-loading',
    title: 'Disc loading',
    unit: 'N/m^2',
    measure: ({ drive, weight }) => discLoading(weight, drive.propeller.diameter, drive.count),
    why: ({ drive, weight }, view) => `${view.short(weight, 'N')} / (${drive.count} π D^2 / 4)`,
  },
  {
    id: 'minutes-to-warning',
    title: 'Hovering time until the warning',
    unit: 'min',
    measure: (carried, view) => minutes(carried, view, 'power.used-warning'),
    why: (carried, view) => minutesText(carried, view, 'power.used-warning'),
  },
];

export const driveFigures: readonly FigureSource[] = driveFigureList.map(
  ({ id, title, unit, hint, measure, why }) => ({
    id,
    title,
    unit,
    ...(hint === undefined ? {} : { hint }),
    from: inputs,
    compute(view): Computed | null {
      const model = carriedBy(view);
      if (model === null) return null;
      const found = estimate(model.value, (carried) => measure(carried, view));
      return found === null ? null : { ...found, why: why(model.value.likely, view), assumed: model.assumed };
    },
  }),
);

/** Share of the charge that may be used: up to the warning, or all but the reserve. */
function usable(view: CraftView, path: 'power.used-warning' | 'power.charge-reserve'): number | null {
  const share = view.quantity(path);
  return share === null ? null : path === 'power.charge-reserve' ? 1 - share : share;
}

function minutes(carried: Carried, view: CraftView, path: Parameters<typeof usable>[1]): number | null {
  const charge = packQuantity(view, 'capacity');
  const share = usable(view, path);
  const current = hovering(carried)?.packCurrent;
  if (charge === null || share === null || current === undefined) return null;
  return (share * charge) / current / 60;
}

function minutesText(carried: Carried, view: CraftView, path: Parameters<typeof usable>[1]): string {
  const capacity = packPath(view, 'capacity');
  const share = view.short(usable(view, path) ?? 0, '%');
  return `${share} of ${capacity === null ? '' : view.shown(capacity)} / ${ampsOf(hovering(carried)?.packCurrent, view)}`;
}

function allThrust(carried: Carried): number | null {
  const state = full(carried);
  return state === null ? null : carried.drive.count * state.thrust;
}

function tipsOf(carried: Carried): number | null {
  const state = full(carried);
  return state === null ? null : tipSpeed(carried.drive.propeller.diameter, state.motor.speed);
}

function percent(share: number | undefined): number | null {
  return share === undefined ? null : 100 * share;
}

function over(value: number | undefined, by: number): number | null {
  return value === undefined ? null : value / by;
}

function productOf(state: DriveState | null): number | null {
  return state === null ? null : state.packVoltage * state.packCurrent;
}

function voltsOf(value: number | undefined, view: CraftView): string {
  return view.short(value ?? 0, 'V');
}

function ampsOf(value: number | undefined, view: CraftView): string {
  return view.short(value ?? 0, 'A');
}

function wattsOf(state: DriveState | null, view: CraftView): string {
  return view.short(state === null ? 0 : state.motor.voltage * state.motor.current, 'W');
}

function round(value: number): string {
  return String(Number(value.toPrecision(3)));
}
