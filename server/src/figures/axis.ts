import type { CraftView } from '../craft/view';
import type { Axis, ControlPath, Gains } from '../physics/loop';
import { reactionLead, turnsPerSecond } from '../physics/motor';
import type { AxisName } from './axis-names';
import { bodyOf } from './body';
import { chainsOf } from './filter-chain';
import { model } from './model';
import { rotorOf } from './motor-lag';
import { commandSeconds, controlWait } from './motor-signal';
import { type OperatingPoint, operatingPointsOf } from './operating-points';

/** An axis with its controller at one place. */
export interface PlacedAxis {
  /** `at 90 % of the usable output, pack full` */
  readonly place: string;
  readonly point: OperatingPoint;
  readonly axis: Axis;
}

/** An axis at every place that is looked at. */
export const axesOf = model<[name: AxisName], readonly PlacedAxis[]>('axes', (own, name) => {
  const gains = gainsOf(own, name);
  const body = bodyOf(own, name);
  const rotor = rotorOf(own);
  const points = operatingPointsOf(own);
  const paths = pathsOf(own);
  if (gains === null || body === null || rotor === null || points === null || paths === null) return null;
  // What is not known of the derivative's filters matters where there is a derivative.
  if (gains.derivative !== 0 && !paths.value.knowsDerivative) return null;
  const situations = situationsOf(own);
  if (situations === null) return null;
  const { leverage, inertia } = body.value;
  const axes = points.value.flatMap((point, index) => {
    const path = paths.value.paths[index];
    const { motor } = point;
    if (path === undefined) return [];
    const axis: Axis = {
      gains,
      path,
      authority: (leverage * (name === 'yaw' ? motor.drag : motor.thrust)) / inertia,
      motorLag: rotor.value.inertia / motor.damping,
      reactionLead:
        name === 'yaw' && motor.dragSlope > 0 ? reactionLead(rotor.value.inertia, motor.dragSlope) : 0,
    };
    return situations.flatMap((situation) => placedIn(situation, point, axis));
  });
  const assumed = [points, paths, rotor, body].flatMap((one) => one.assumed);
  return { value: axes, assumed: [...new Set(assumed)] };
});

interface Paths {
  readonly paths: readonly ControlPath[];
  readonly knowsDerivative: boolean;
}

/** Filters and waits at every operating point: notches that follow the motors stand elsewhere at each. */
const pathsOf = model<[], Paths>('control paths', (own) => {
  const points = operatingPointsOf(own);
  const chains = chainsOf(own);
  const command = commandSeconds(own);
  const wait = controlWait(own);
  const gyroRate = own.quantity('gyro.rate');
  if (points === null || chains === null || command === null || wait === null || gyroRate === null)
    return null;
  const { gyro, derivative } = chains.value;
  const paths = points.value.map(({ state }): ControlPath => {
    const turns = turnsPerSecond(state.motor.speed);
    return {
      gyroFilters: gyro.all(turns),
      derivativeFilters: derivative?.all(turns) ?? [],
      delay: 0.5 / gyroRate + wait + command,
    };
  });
  return { value: { paths, knowsDerivative: derivative !== null }, assumed: chains.assumed };
});

/** Null where there is nothing to hold the axis with. */
function gainsOf(view: CraftView, name: AxisName): Gains | null {
  const proportional = view.quantity(`control.${name}.proportional`);
  const integral = view.quantity(`control.${name}.integral`) ?? 0;
  const derivative = view.quantity(`control.${name}.derivative`) ?? 0;
  return proportional === null || proportional <= 0 ? null : { proportional, integral, derivative };
}

/** Shares of the gains while something lasts, at some throttles. */
interface Situation {
  /** Before the place; empty for ordinary flight. */
  readonly words: string;
  readonly holds: (point: OperatingPoint) => boolean;
  /** Shares at a throttle that the pilot asks for. */
  readonly gains: (gains: Gains, demand: number) => Gains;
}

function placedIn(
  { words, holds, gains }: Situation,
  point: OperatingPoint,
  axis: Axis,
): readonly PlacedAxis[] {
  if (!holds(point)) return [];
  const place = words === '' ? point.place : `${words}, ${point.place}`;
  return [{ place, point, axis: { ...axis, gains: gains(axis.gains, point.demand) } }];
}

const parts = ['proportional', 'integral', 'derivative'] as const;

/** Ordinary flight, and those situations in which the script has the gains otherwise. Null: one can't be read. */
function situationsOf(view: CraftView): readonly Situation[] | null {
  const high = sharesOf(view, 'high-throttle');
  const jumps = sharesOf(view, 'throttle-jumps');
  const turns = sharesOf(view, 'fast-turn');
  const zero = sharesOf(view, 'zero-throttle');
  if (high === null || jumps === null || turns === null || zero === null) return null;
  const isFlight = ({ throttle }: OperatingPoint) => throttle !== 'idle';
  const faded = (gains: Gains, demand: number) => {
    const way = high.from < 1 ? Math.max(0, Math.min(1, (demand - high.from) / (1 - high.from))) : 0;
    return scaled(gains, (part) => 1 + way * (high.shares[part] - 1));
  };
  const changed = (
    words: string,
    { from, shares }: Shares,
    holds: Situation['holds'],
  ): readonly Situation[] =>
    Number.isFinite(from) && parts.some((part) => shares[part] !== 1)
      ? [{ words, holds, gains: (gains, demand) => scaled(faded(gains, demand), (part) => shares[part]) }]
      : [];
  return [
    { words: '', holds: isFlight, gains: faded },
    ...changed('while the throttle jumps', jumps, isFlight),
    ...changed('in a fast turn', turns, isFlight),
    ...changed('with the throttle at zero', { ...zero, from: 0 }, ({ throttle }) => throttle === 'idle'),
  ];
}

interface Shares {
  /** Where the situation begins; infinite where the script says of no beginning. */
  readonly from: number;
  readonly shares: Gains;
}

function sharesOf(view: CraftView, situation: string): Shares | null {
  const path = (word: string) => `control.when.${situation}.${word}`;
  const isSaid = view.isSet(path('from'));
  const from = isSaid ? view.quantity(path('from')) : Number.POSITIVE_INFINITY;
  const [proportional, integral, derivative] = parts.map((part) =>
    view.isSet(path(part)) ? view.quantity(path(part)) : 1,
  );
  if (from === null || proportional == null || integral == null || derivative == null) return null;
  return { from, shares: { proportional, integral, derivative } };
}

function scaled(gains: Gains, share: (part: (typeof parts)[number]) => number): Gains {
  return {
    proportional: gains.proportional * share('proportional'),
    integral: gains.integral * share('integral'),
    derivative: gains.derivative * share('derivative'),
  };
}

/** Every setting that holds an axis. */
export function gainSettings(name: AxisName): readonly string[] {
  return [name, 'when.high-throttle'].flatMap((at) => parts.map((part) => `control.${at}.${part}`));
}
