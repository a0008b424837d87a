import type { CraftView } from '../craft/view';
import { stateAtThrottle } from '../physics/drive';
import { turnsPerSecond } from '../physics/motor';
import { carriedBy } from './drive';
import { full, hovering } from './drive-figures';
import type { Computed } from './figure';

export type FlightState = 'idle' | 'hover' | 'full';

/** What is not known of motors and propellers moves their speed by so much. Common practice. */
const doubts = { idle: 0.3, hover: 0.1, full: 0.1 };

/** How often a second the motors turn; null while motors, propellers or pack are not known. */
export function turnsAt(view: CraftView, state: FlightState): Computed | null {
  const held = state === 'idle' ? view.quantity('motor.idle-speed') : null;
  if (held !== null) return { likely: turnsPerSecond(held), why: `${view.shown('motor.idle-speed')} / 60` };
  const carried = carriedBy(view);
  if (carried === null) return null;
  const { likely: model } = carried.value;
  const turning = {
    idle: () => idle(view),
    hover: () => hovering(model)?.motor,
    full: () => full(model)?.motor,
  };
  const speed = turning[state]()?.speed;
  if (speed === undefined) return null;
  const likely = turnsPerSecond(speed);
  const doubt = doubts[state];
  const at = state === 'idle' ? ` at ${view.shown('motor.idle')} of throttle` : '';
  return {
    likely,
    low: (1 - doubt) * likely,
    high: (1 + doubt) * likely,
    why: `${view.short(speed, 'rpm')}${at} / 60`,
    assumed: carried.assumed,
  };
}

function idle(view: CraftView) {
  const throttle = view.quantity('motor.idle');
  const carried = carriedBy(view);
  return throttle === null || carried === null
    ? undefined
    : stateAtThrottle(carried.value.likely.drive, throttle).motor;
}
