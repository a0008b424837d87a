import { inBase } from '../catalog/known-parameter';
import type { CraftView } from '../craft/view';
import { type DriveState, stateAtThrottle, stateForThrust } from '../physics/drive';
import { curveSlope, curveValue, type MonotoneCurve, monotoneCurve } from '../physics/monotone-curve';
import { dragSlope, speedDamping, speedPerVolt } from '../physics/motor';
import { propellerThrust, torqueFactor } from '../physics/propeller';
import { type Carried, carriedBy } from './drive';
import { model } from './model';
import { chemistryInView, fullCell, packCount } from './pack-in-view';

/** Where a craft is looked at: how much its motors do, with how much in its pack. */
export interface OperatingPoint {
  /** `in the hover, pack full` */
  readonly place: string;
  readonly throttle: ThrottleName;
  /** Voltage of the pack without a load, V. */
  readonly openVoltage: number;
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

/** How the script has the motors work. */
export interface Outputs {
  /** Shares of full output. */
  readonly idle: number;
  readonly limit: number;
  /** Throttle that the top of the stick stands for. */
  readonly stickLimit: number;
  /** Output for each share of thrust that is asked for. */
  readonly shape: MonotoneCurve;
  /** Share of a falling voltage that is made up for, and the voltage of the full pack. */
  readonly evened: number;
  readonly fullVoltage: number;
}

export const operatingPointsOf = model<[], readonly OperatingPoint[]>('operating points', (own) => {
  const carried = carriedBy(own);
  const outputs = outputsOf(own);
  const landing = landingCell(own);
  const cells = packCount(own, 'cells');
  if (carried === null || outputs === null || cells === null) return null;
  const { likely } = carried.value;
  const full = withVoltage(likely, outputs.fullVoltage);
  const low = landing === null ? null : landed(full, Math.min(cells * landing.volts, outputs.fullVoltage));
  const points = [
    ...pointsWith(full, 'pack full', outputs),
    ...(low === null ? [] : pointsWith(low, 'pack at its landing voltage', outputs)),
  ];
  if (points.length === 0) return null;
  const assumed = landing?.isUsual === true ? ['the usual landing voltage of such cells'] : [];
  return { value: points, assumed: [...carried.assumed, ...assumed] };
});

/** How a motor answers at a place with each doubt of the drive turned, down and up. */
export const turnedResponses = model<[place: string], readonly (readonly [MotorResponse, MotorResponse])[]>(
  'turned responses',
  (own, place) => {
    const carried = carriedBy(own);
    const outputs = outputsOf(own);
    const at = operatingPointsOf(own)?.value.find((point) => point.place === place);
    if (carried === null || outputs === null || at === undefined) return null;
    const responseOf = (turned: Carried) => {
      const state = stateAt(withVoltage(turned, at.openVoltage), at.throttle, outputs);
      // One that can't fly there at all is no measure for the others.
      return state === null ? at.motor : pointIn(turned, state, at, outputs).motor;
    };
    return { value: carried.value.turned.map(([low, high]) => [responseOf(low), responseOf(high)] as const) };
  },
);

function outputsOf(view: CraftView): Outputs | null {
  const [idle, limit] = [view.quantity('motor.idle'), view.quantity('motor.output-limit')];
  const stickLimit = view.quantity('stick.throttle.limit');
  const evened = view.quantity('power.even-thrust');
  const cells = packCount(view, 'cells');
  const cell = fullCell(view);
  const shape = shapeOf(view);
  if (limit === null || stickLimit === null || evened === null || shape === null) return null;
  if (cells === null || cell === null) return null;
  return { idle: idle ?? 0, limit, stickLimit, shape, evened, fullVoltage: cells * cell };
}

/** Null where its points do not go outwards. */
function shapeOf(view: CraftView): MonotoneCurve | null {
  const points = view.curve('motor.thrust-shape') ?? [];
  const isRising = points.every(({ x }, index) => index === 0 || x > (points[index - 1]?.x ?? x));
  return points.length >= 2 && isRising ? monotoneCurve(points) : null;
}

/** The voltage a cell under load at which the pilot lands: the script's, else what is usual for its kind. */
function landingCell(view: CraftView): { readonly volts: number; readonly isUsual: boolean } | null {
  const given = view.quantity('power.land-cell');
  if (given !== null) return { volts: given, isUsual: false };
  const usual = chemistryInView(view)?.land;
  return usual === undefined ? null : { volts: inBase(usual), isUsual: true };
}

function withVoltage(carried: Carried, openVoltage: number): Carried {
  return { ...carried, drive: { ...carried.drive, openVoltage } };
}

/** With so much left that its pack has just that voltage in the hover; null where it then can't hover. */
function landed(full: Carried, voltage: number): Carried | null {
  const hover = stateForThrust(full.drive, full.weight);
  if (hover === null || !(voltage > 0)) return null;
  const current = (hover.packVoltage * hover.packCurrent) / voltage;
  return withVoltage(full, Math.min(full.drive.openVoltage, voltage + full.drive.sourceResistance * current));
}

function pointsWith(carried: Carried, pack: string, outputs: Outputs): readonly OperatingPoint[] {
  const names: readonly ThrottleName[] = ['idle', 'hover', 'midway', 'high'];
  return names.flatMap((throttle) => {
    const state = stateAt(carried, throttle, outputs);
    if (state === null) return [];
    const { openVoltage } = carried.drive;
    return [
      pointIn(carried, state, { place: placeWords(throttle, pack, outputs), throttle, openVoltage }, outputs),
    ];
  });
}

function placeWords(throttle: ThrottleName, pack: string, outputs: Outputs): string {
  const isStick = throttle === 'high' && topOf(outputs) < highest * outputs.limit;
  return `${isStick ? 'with the throttle stick at the top' : throttleWords[throttle]}, ${pack}`;
}

/** The highest output that is looked at. */
function topOf({ limit, stickLimit, shape }: Outputs): number {
  return Math.min(highest * limit, curveValue(shape, stickLimit));
}

/** Null where the craft can't hover, or hovers above the highest place that is looked at. */
function stateAt({ drive, weight }: Carried, throttle: ThrottleName, outputs: Outputs): DriveState | null {
  const hover = stateForThrust(drive, weight);
  if (hover === null || throttle === 'hover') return hover;
  if (throttle === 'idle') return stateAtThrottle(drive, outputs.idle);
  const top = topOf(outputs);
  if (top <= hover.throttle) return null;
  return stateAtThrottle(drive, throttle === 'high' ? top : (top + hover.throttle) / 2);
}

function pointIn(
  { drive }: Carried,
  state: DriveState,
  at: Pick<OperatingPoint, 'place' | 'throttle' | 'openVoltage'>,
  outputs: Outputs,
): OperatingPoint {
  const { idle, limit, shape, evened, fullVoltage } = outputs;
  const made = 1 + evened * (fullVoltage / state.packVoltage - 1);
  const demandFor = (output: number) => demandOf(shape, output / made);
  const demand = demandFor(state.throttle);
  const outputSlope = curveSlope(shape, demand) * made;
  return {
    place: at.place,
    throttle: at.throttle,
    openVoltage: at.openVoltage,
    state,
    demand,
    room: { up: Math.max(0, demandFor(limit) - demand), down: Math.max(0, demand - demandFor(idle)) },
    outputSlope,
    motor: motorIn(drive, state, outputSlope),
  };
}

function motorIn(drive: Carried['drive'], state: DriveState, outputSlope: number): MotorResponse {
  const { motor, propeller, airDensity } = drive;
  const { speed } = state.motor;
  const factor = torqueFactor(propeller, airDensity);
  // One side is turned up as the other is turned down: the pack does not feel it.
  const faster = outputSlope * state.packVoltage * speedPerVolt(motor, speed, factor);
  const thrust = speed > 0 ? (2 * propellerThrust(propeller, speed, airDensity)) / speed : 0;
  const slope = dragSlope(speed, factor);
  return {
    thrust: thrust * faster,
    drag: slope * faster,
    damping: speedDamping(motor, speed, factor),
    dragSlope: slope,
  };
}

const halvings = 30;

/** What has to be asked for to get an output; the end of the curve where it does not go so far. */
function demandOf(shape: MonotoneCurve, output: number): number {
  let [low, high] = [shape.points[0]?.x ?? 0, shape.points.at(-1)?.x ?? 1];
  for (let step = 0; step < halvings; step += 1) {
    const middle = (low + high) / 2;
    if (curveValue(shape, middle) < output) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}
