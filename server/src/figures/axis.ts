import type { CraftView } from '../craft/view';
import { boxInertia, pointInertia } from '../physics/inertia';
import type { Axis, Gains } from '../physics/loop';
import { settled } from '../physics/motor';
import { propellerThrust, torqueFactor } from '../physics/propeller';
import { type Carried, carriedBy } from './drive';
import { hovering } from './drive-figures';
import { chainsOf } from './filter-chain';
import { model } from './model';
import { type MotorLag, motorLagOf } from './motor-lag';
import { commandSeconds, controlWait } from './motor-signal';
import { type Doubt, type Doubtful, doubtful, doubtOf } from './uncertain';

export const axisNames = ['roll', 'pitch', 'yaw'] as const;
export type AxisName = (typeof axisNames)[number];

/** Figures of every axis: `roll-step`, `pitch-step`, `yaw-step`. */
export function ofAxes(...what: readonly string[]): readonly string[] {
  return axisNames.flatMap((axis) => what.map((one) => `${axis}-${one}`));
}

/** An axis with its controller in the hover. */
export const axisOf = model<[name: AxisName], Doubtful<Axis>>('axis', (own, name) => {
  const carried = carriedBy(own);
  const gains = carried === null ? null : gainsInHover(own, name, carried.value.likely);
  const chains = chainsOf(own);
  const lag = motorLagOf(own);
  const command = commandSeconds(own);
  const wait = controlWait(own);
  const gyroRate = own.quantity('gyro.rate');
  if (gains === null || carried === null || chains === null || lag === null || command === null) return null;
  if (gyroRate === null || wait === null) return null;
  const { hover: turns } = chains.value;
  // What is not known of the derivative's filters matters where there is a derivative.
  if (gains.derivative !== 0 && chains.value.derivative === null) return null;
  const inertia = inertiaOf(own, name);
  const torque = torqueOfCommand(own, carried.value.likely, name);
  if (inertia === null || torque === null) return null;
  const axis: Axis = {
    gains,
    gyroFilters: chains.value.gyro.all(turns),
    derivativeFilters: chains.value.derivative?.all(turns) ?? [],
    authority: torque / inertia.value,
    motorLag: lag.value.likely,
    delay: 0.5 / gyroRate + wait + command,
  };
  const assumed = new Set([...carried.assumed, ...chains.assumed, ...lag.assumed, ...inertia.assumed]);
  return { value: doubtful(axis, doubtsOf(lag.value, inertia.spread)), assumed: [...assumed] };
});

function doubtsOf(lag: MotorLag, inertiaSpread: number): readonly Doubt<Axis>[] {
  return [
    doubtOf(inertiaSpread, (axis, by) => ({ ...axis, authority: axis.authority / by })),
    {
      low: (axis) => ({ ...axis, motorLag: lag.low }),
      high: (axis) => ({ ...axis, motorLag: lag.high }),
    },
  ];
}

/** Where the hover lies at high throttle already, that situation's shares count. */
function gainsInHover(view: CraftView, name: AxisName, carried: Carried): Axis['gains'] | null {
  const gains = gainsOf(view, name);
  const state = hovering(carried);
  return gains === null || state === null ? null : gainsAtThrottle(view, gains, state.throttle);
}

function gainsOf(view: CraftView, name: AxisName): Axis['gains'] | null {
  const proportional = view.quantity(`control.${name}.proportional`);
  const integral = view.quantity(`control.${name}.integral`) ?? 0;
  const derivative = view.quantity(`control.${name}.derivative`) ?? 0;
  return proportional === null || proportional <= 0 ? null : { proportional, integral, derivative };
}

interface Inertia {
  readonly value: number;
  /** Share. */
  readonly spread: number;
  readonly assumed: readonly string[];
}

/** Shares of what hangs out at the arms and sizes of the rest against the motor spacing. Common practice. */
const build = { atArms: 0.42, width: 0.25, length: 0.45, height: 0.2 };

function inertiaOf(view: CraftView, name: AxisName): Inertia | null {
  const given = view.quantity(`craft.inertia.${name}`);
  if (given !== null) return { value: given, spread: 0.15, assumed: [] };
  const spacing = view.quantity('craft.motor-spacing');
  const craft = view.quantity('craft.mass');
  const whole = carriedMass(view);
  if (spacing === null || craft === null || whole === null) return null;
  const arm = spacing / 2;
  const distance = name === 'yaw' ? arm : arm * Math.SQRT1_2;
  const arms = pointInertia([{ mass: build.atArms * craft, distance }]);
  const [wide, long, high] = [build.width, build.length, build.height].map((share) => share * spacing);
  const sides = { roll: [wide, high], pitch: [long, high], yaw: [wide, long] }[name];
  const body = boxInertia(whole - build.atArms * craft, sides[0] ?? 0, sides[1] ?? 0);
  const assumed = [
    `inertia about ${name} of a usual build: ${build.atArms * 100} % of the dry mass out at the motors`,
  ];
  return { value: arms + body, spread: 0.35, assumed };
}

function carriedMass(view: CraftView): number | null {
  const weight = carriedBy(view)?.value.likely.weight;
  return weight === undefined ? null : weight / 9.806_65;
}

/** Torque (Nm) on the body that a command of 1 would give, from a small one about the hover. */
function torqueOfCommand(view: CraftView, carried: Carried, name: AxisName): number | null {
  const spacing = view.quantity('craft.motor-spacing');
  const state = hovering(carried);
  if (spacing === null || state === null) return null;
  const { motor, propeller, airDensity, count } = carried.drive;
  const factor = torqueFactor(propeller, airDensity);
  const step = 0.01;
  // One side is turned up as the other is turned down: the pack does not feel it.
  const [less, more] = [-step, step].map((change) =>
    settled(motor, (state.throttle + change) * state.packVoltage, factor),
  );
  if (less === undefined || more === undefined) return null;
  const torque =
    name === 'yaw'
      ? factor * (more.speed ** 2 - less.speed ** 2)
      : (spacing / 2) *
        Math.SQRT1_2 *
        (propellerThrust(propeller, more.speed, airDensity) -
          propellerThrust(propeller, less.speed, airDensity));
  return (count * torque) / (2 * step);
}

/**
 * The gains that count at a throttle (a share): at high throttle the situation's shares come in evenly, from its
 * beginning up to full throttle. Null where the script speaks of that and can't be read.
 */
function gainsAtThrottle(view: CraftView, gains: Gains, throttle: number): Gains | null {
  const path = (word: string) => `control.when.high-throttle.${word}`;
  if (!view.isSet(path('from'))) return gains;
  const from = view.quantity(path('from'));
  if (from === null || from >= 1) return null;
  const way = Math.max(0, Math.min(1, (throttle - from) / (1 - from)));
  const [proportional, integral, derivative] = (['proportional', 'integral', 'derivative'] as const).map(
    (gain) => {
      const share = view.quantity(path(gain));
      return share === null ? null : gains[gain] * (1 + way * (share - 1));
    },
  );
  if (proportional == null || integral == null || derivative == null) return null;
  return { proportional, integral, derivative };
}
