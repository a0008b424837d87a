import type { CraftView } from '../craft/view';
import { type DriveState, stateAtThrottle } from '../physics/drive';
import { dragSlope, speedPerVolt } from '../physics/motor';
import { propellerThrust, torqueFactor } from '../physics/propeller';
import type { Carried } from './carried';
import { dampingAt } from './damping';
import { carriedOnFull, carriedToLand } from './drive';
import { hovering } from './drive-states';
import { model } from './model';
import type { Throttle } from './throttle';

/** Where a craft is looked at: how much its motors do, with how much in its pack. */
export interface OperatingPoint {
  /** `in the hover, pack full` */
  readonly place: string;
  readonly throttle: ThrottleName;
  readonly pack: PackCharge;
  readonly state: DriveState;
  /** The throttle (a share) that the pilot asks for there. */
  readonly demand: number;
  /** How far the throttle may move from there, up to the most that the motors may give and down to idle; shares. */
  readonly room: { readonly up: number; readonly down: number };
  /** Output of the motors a share of what is asked for. */
  readonly outputSlope: number;
  readonly motor: MotorResponse;
}

/** How one motor answers a command of 1 there, once it has followed. */
export interface MotorResponse {
  /** N */
  readonly thrust: number;
  /** Of the propeller's drag, Nm. */
  readonly drag: number;
  /** Torque a rad/s that holds a change of speed back, Nm s. */
  readonly damping: number;
  /** The part of it that is the propeller's. */
  readonly dragSlope: number;
}

export type ThrottleName = 'hover' | 'midway' | 'high' | 'idle';

const throttleWords: Readonly<Record<ThrottleName, string>> = {
  hover: 'in the hover',
  midway: 'midway from the hover to the top',
  high: 'at 90 % of the usable output',
  idle: 'at idle',
};

/** At full output nothing is left to steer with: the highest place looked at is this share of what may be used. */
const highest = 0.9;

/** How much is left in the pack. */
const packs = [
  { words: 'pack full', carried: carriedOnFull },
  { words: 'pack due to land', carried: carriedToLand },
] as const;

type PackCharge = (typeof packs)[number];

/** With each of the packs at idle, in the hover, midway and near the top, as far as the craft can hover with it. */
export const operatingPointsOf = model<[], readonly OperatingPoint[]>('operating points', (own) => {
  const assumed: string[] = [];
  const points = packs.flatMap((pack) => {
    const found = pack.carried(own);
    if (found === null) return [];
    assumed.push(...found.assumed);
    return pointsWith(own, pack, found.value.likely);
  });
  return points.length === 0 ? null : { value: points, assumed: [...new Set(assumed)] };
});

/** The operating point of a name; undefined where there is none. */
export function pointAt(view: CraftView, place: string): OperatingPoint | undefined {
  return operatingPointsOf(view)?.value.find((point) => point.place === place);
}

/** How a motor answers at a place with each doubt of the drive turned, down and up. */
export const turnedResponses = model<[place: string], readonly (readonly [MotorResponse, MotorResponse])[]>(
  'turned responses',
  (own, place) => {
    const at = pointAt(own, place);
    const carried = at?.pack.carried(own) ?? null;
    if (at === undefined || carried === null) return null;
    // One that can't fly there at all is no measure for the others.
    const responseOf = (turned: Carried) => pointOf(own, at.pack, turned, at.throttle)?.motor ?? at.motor;
    return { value: carried.value.turned.map(([low, high]) => [responseOf(low), responseOf(high)] as const) };
  },
);

function pointsWith(view: CraftView, pack: PackCharge, carried: Carried): readonly OperatingPoint[] {
  const names: readonly ThrottleName[] = ['idle', 'hover', 'midway', 'high'];
  return names.flatMap((throttle) => pointOf(view, pack, carried, throttle) ?? []);
}

/** Null where the craft can't hover, or hovers above the highest place that is looked at. */
function pointOf(
  view: CraftView,
  pack: PackCharge,
  carried: Carried,
  name: ThrottleName,
): OperatingPoint | null {
  const { throttle } = carried;
  const idle = view.quantityOr('motor.idle', 0) ?? 0;
  const state = throttle === null ? null : stateAt(carried, throttle, name, idle);
  if (throttle === null || state === null) return null;
  const { packVoltage } = state;
  const demand = throttle.askedFor(state.throttle, packVoltage);
  const outputSlope = throttle.slopeAt(demand, packVoltage);
  const top = throttle.askedFor(throttle.lid, packVoltage);
  const bottom = throttle.askedFor(idle, packVoltage);
  return {
    place: `${throttleWords[name]}, ${pack.words}`,
    throttle: name,
    pack,
    state,
    demand,
    room: { up: Math.max(0, top - demand), down: Math.max(0, demand - bottom) },
    outputSlope,
    motor: motorIn(carried, state, outputSlope),
  };
}

function stateAt(carried: Carried, { most }: Throttle, name: ThrottleName, idle: number): DriveState | null {
  const hover = hovering(carried);
  if (hover === null || name === 'hover') return hover;
  if (name === 'idle') return stateAtThrottle(carried.drive, idle);
  const top = highest * most;
  if (top <= hover.throttle) return null;
  return stateAtThrottle(carried.drive, name === 'high' ? top : (top + hover.throttle) / 2);
}

function motorIn(carried: Carried, state: DriveState, outputSlope: number): MotorResponse {
  const { motor, propeller, airDensity } = carried.drive;
  const { speed } = state.motor;
  const factor = torqueFactor(propeller, airDensity);
  // One side is turned up as the other is turned down: the pack does not feel it.
  const faster = outputSlope * state.packVoltage * speedPerVolt(motor, speed, factor);
  const thrust = speed > 0 ? (2 * propellerThrust(propeller, speed, airDensity)) / speed : 0;
  const slope = dragSlope(speed, factor);
  return {
    thrust: thrust * faster,
    drag: slope * faster,
    damping: dampingAt(carried, speed),
    dragSlope: slope,
  };
}
