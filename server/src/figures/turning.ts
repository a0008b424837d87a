import type { CraftView } from '../craft/view';
import { stateAtThrottle } from '../physics/drive';
import { turnsPerSecond } from '../physics/motor';
import type { Carried } from './carried';
import { carriedBy, carriedOnFull } from './drive';
import { full, hovering } from './drive-states';
import type { Computed } from './figure';
import { type Model, model } from './model';
import { type Doubtful, estimate } from './uncertain';
import { fine } from './why';

/** `full`: with a full pack, when they turn fastest. */
export type FlightState = 'idle' | 'hover' | 'full';

/** How often a second the motors turn, from the slowest to the fastest that is likely. */
export interface Turns {
  readonly likely: number;
  readonly low: number;
  readonly high: number;
  /** The settings or the speed that it comes from. */
  readonly why: string;
}

/** At idle controllers are far from what the model has them do. Common practice. */
const doubtAtIdle = 0.3;

/** Null while motors, propellers or pack are not known. */
export function turnsAt(view: CraftView, state: FlightState): Computed | null {
  const found = turnsOf(view, state);
  if (found === null) return null;
  const { likely, low, high, why } = found.value;
  return { likely, low, high, why, assumed: found.assumed };
}

const turnsOf = model<[FlightState], Turns>('turns', (own, state) => {
  const held = state === 'idle' ? own.quantity('motor.idle-speed') : null;
  if (held !== null) return { value: exactly(held, `${own.shown('motor.idle-speed')}, in turns a second`) };
  const carried = (state === 'full' ? carriedOnFull : carriedBy)(own);
  const speed = carried === null ? null : speedIn(own, state, carried);
  if (carried === null || speed === null) return null;
  const at = state === 'idle' ? `, at ${own.shown('motor.idle')} of throttle` : '';
  const why = `${fine(speed.likely, 'rpm')}, in turns a second${at}`;
  const likely = turnsPerSecond(speed.likely);
  const low = Math.max(0, turnsPerSecond(speed.low));
  const high = turnsPerSecond(speed.high);
  return { value: { likely, low, high, why }, assumed: carried.assumed };
});

function exactly(speed: number, why: string): Turns {
  const likely = turnsPerSecond(speed);
  return { likely, low: likely, high: likely, why };
}

/** Speeds in rad/s. The motors' doubts are those of the model, so that a speed and its tone are equally sure. */
function speedIn(view: CraftView, state: FlightState, { value }: Model<Doubtful<Carried>>) {
  if (state === 'hover') return estimate(value, (one) => hovering(one)?.motor.speed ?? null);
  if (state === 'full') return estimate(value, (one) => full(one)?.motor.speed ?? null);
  const throttle = view.quantity('motor.idle');
  if (throttle === null) return null;
  const likely = stateAtThrottle(value.likely.drive, throttle).motor.speed;
  return { likely, low: (1 - doubtAtIdle) * likely, high: (1 + doubtAtIdle) * likely };
}
