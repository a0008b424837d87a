import type { CraftView } from '../craft/view';
import { type Axis, type ControlPath, type FilteredTone, filteredTone, type Gains } from '../physics/loop';
import { reactionLead, turnsPerSecond } from '../physics/motor';
import type { AxisName } from './axis-names';
import { bodyOf } from './body';
import { chainsOf, type Working } from './filter-chain';
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
  if (bare === null) return null;
  const assumed = new Set(bare.assumed);
  const axes: PlacedAxis[] = [];
  for (const { place, point, axis } of bare.value) {
    const path = pathOf(own, point.place);
    // What is not known of the derivative's filters matters where there is a derivative.
    if (path === null || (axis.gains.derivative !== 0 && !path.value.knowsDerivative)) return null;
    for (const words of path.assumed) assumed.add(words);
    axes.push({ place, point, toneAt: path.value.toneAt, axis: { ...axis, path: path.value.path } });
  }
  return { value: axes, assumed: [...assumed] };
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

/** Filters and waits at an operating point: notches that follow the motors stand elsewhere at each. */
const pathOf = model<[place: string], PlacedPath>('control path', (own, place) => {
  const point = operatingPointsOf(own)?.value.find((one) => one.place === place);
  const chains = chainsOf(own);
  const command = commandSeconds(own);
  const wait = controlWait(own);
  const gyroRate = own.quantity('gyro.rate');
  if (point === undefined || chains === null || command === null || wait === null || gyroRate === null)
    return null;
  const { gyro, derivative } = chains.value;
  const turns = turnsPerSecond(point.state.motor.speed);
  const path = {
    gyroFilters: gyro.all(turns),
    derivativeFilters: derivative?.all(turns) ?? [],
    delay: 0.5 / gyroRate + wait + command,
  };
  return {
    value: { path, knowsDerivative: derivative !== null, toneAt: tonesOf(path, gyro, turns) },
    assumed: chains.assumed,
  };
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
  const integral = view.quantity(`control.${name}.integral`) ?? 0;
  const derivative = view.quantity(`control.${name}.derivative`) ?? 0;
  return proportional === null || proportional <= 0 ? null : { proportional, integral, derivative };
}

/** Every setting that holds an axis. */
export function gainSettings(name: AxisName): readonly string[] {
  return [name, 'when.high-throttle'].flatMap((at) => gainParts.map((part) => `control.${at}.${part}`));
}
