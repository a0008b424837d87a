import type { CraftView } from '../craft/view';
import { type Axis, type ControlPath, type FilteredTone, filteredTone, type Gains } from '../physics/loop';
import { reactionLead, turnsPerSecond } from '../physics/motor';
import type { AxisName } from './axis-names';
import { bodyOf } from './body';
import { chainOf, chainsOf, type Working } from './filter-chain';
import { strays } from './filter-figures';
import { model } from './model';
import { rotorOf } from './motor-lag';
import { commandSeconds, controlWait } from './motor-signal';
import { type OperatingPoint, operatingPointsOf } from './operating-points';
import { gainParts, type Situation, situationsOf } from './situations';

/** An axis with its controller at one place. */
export interface PlacedAxis {
  /** `at 90 % of the usable output, pack full` */
  readonly place: string;
  readonly point: OperatingPoint;
  readonly axis: Axis;
  /** One motor's tone there behind the filters that surely meet it, the motors at a share of their likely speed. */
  readonly toneAt: (share: number) => FilteredTone;
}

/** An axis at every place that is looked at. */
export const axesOf = model<[name: AxisName], readonly PlacedAxis[]>('axes', (own, name) => {
  const bare = bareAxesOf(own, name);
  // Asked for in any case: what filters and waits lack is told together with what else is missing.
  const paths = pathsOf(own);
  if (bare === null || paths === null) return null;
  const axes: PlacedAxis[] = [];
  for (const { place, point, axis } of bare.value) {
    const placed = paths.value.get(point);
    // What is not known of the derivative's filters matters where there is a derivative.
    if (placed === undefined || (axis.gains.derivative !== 0 && !placed.knowsDerivative)) {
      chainOf(own, 'derivative');
      return null;
    }
    const { gains, authority, motorLag, reactionLead } = axis;
    const { path, toneAt } = placed;
    axes.push({ place, point, toneAt, axis: { gains, path, authority, motorLag, reactionLead } });
  }
  return { value: axes, assumed: [...new Set([...bare.assumed, ...paths.assumed])] };
});

/** An axis at a place with all but its filters: they are what is tried most. */
interface BareAxis {
  readonly place: string;
  readonly point: OperatingPoint;
  readonly axis: Omit<Axis, 'path'>;
}

const bareAxesOf = model<[name: AxisName], readonly BareAxis[]>('bare axes', (own, name) => {
  const gains = gainsOf(own, name);
  const body = bodyOf(own, name);
  const rotor = rotorOf(own);
  const points = operatingPointsOf(own);
  const situations = situationsOf(own);
  if (gains === null || body === null || rotor === null || points === null || situations === null)
    return null;
  const { leverage, inertia } = body.value;
  const axes = points.value.flatMap((point) => {
    const { motor } = point;
    const isYaw = name === 'yaw';
    const axis = {
      gains,
      authority: (leverage * (isYaw ? motor.drag : motor.thrust)) / inertia,
      motorLag: rotor.value.inertia / motor.damping,
      reactionLead: isYaw && motor.dragSlope > 0 ? reactionLead(rotor.value.inertia, motor.dragSlope) : 0,
    };
    return situations.value.flatMap((situation) => placedIn(situation, point, axis));
  });
  return { value: axes, assumed: [points, rotor, body].flatMap((one) => one.assumed) };
});

function placedIn(
  { words, holds, gains }: Situation,
  point: OperatingPoint,
  axis: BareAxis['axis'],
): readonly BareAxis[] {
  if (!holds(point)) return [];
  const place = words === '' ? point.place : `${words}, ${point.place}`;
  return [{ place, point, axis: { ...axis, gains: gains(axis.gains, point.demand) } }];
}

interface PlacedPath {
  readonly path: ControlPath;
  readonly knowsDerivative: boolean;
  readonly toneAt: PlacedAxis['toneAt'];
}

/** Filters and waits at each operating point: notches that follow the motors stand elsewhere at each. */
const pathsOf = model<[], ReadonlyMap<OperatingPoint, PlacedPath>>('control paths', (own) => {
  const points = operatingPointsOf(own);
  const chains = chainsOf(own);
  const delay = delayOf(own);
  if (points === null || chains === null || delay === null) return null;
  const { gyro, derivative } = chains.value;
  const paths = points.value.map((point): [OperatingPoint, PlacedPath] => {
    const turns = turnsPerSecond(point.state.motor.speed);
    const path = {
      gyroFilters: gyro.all(turns),
      derivativeFilters: derivative?.all(turns) ?? [],
      delay: delay.value,
    };
    return [point, { path, knowsDerivative: derivative !== null, toneAt: tonesOf(path, gyro, turns) }];
  });
  return { value: new Map(paths), assumed: [...chains.assumed, ...delay.assumed] };
});

/** Everything that only waits, s: sampling, computing, the command's way. */
const delayOf = model<[], number>('loop delay', (own) => {
  const command = commandSeconds(own);
  const wait = controlWait(own);
  const gyroRate = own.quantity('gyro.rate');
  if (command === null || wait === null || gyroRate === null) return null;
  return { value: 0.5 / gyroRate + wait + command };
});

/** All axes ask for the same few shares. */
function tonesOf({ derivativeFilters }: ControlPath, { own }: Working, turns: number): PlacedAxis['toneAt'] {
  const known = new Map<number, FilteredTone>();
  return (share) => {
    const kept = known.get(share);
    if (kept !== undefined) return kept;
    const filters = { gyroFilters: own(share * turns), derivativeFilters };
    // A motor is never quite where its notch was set.
    const tone = filteredTone(filters, (1 + strays.usual) * share * turns);
    known.set(share, tone);
    return tone;
  };
}

/** Null where there is nothing to hold the axis with. */
function gainsOf(view: CraftView, name: AxisName): Gains | null {
  const proportional = view.quantity(`control.${name}.proportional`);
  const integral = view.quantityOr(`control.${name}.integral`, null) ?? 0;
  const derivative = view.quantityOr(`control.${name}.derivative`, null) ?? 0;
  return proportional === null || proportional <= 0 ? null : { proportional, integral, derivative };
}

/** Every setting that holds an axis. */
export function gainSettings(name: AxisName): readonly string[] {
  return [name, 'when.high-throttle'].flatMap((at) => gainParts.map((part) => `control.${at}.${part}`));
}
