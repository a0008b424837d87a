import { type DriveState, stateAtThrottle, stateForThrust } from '../physics/drive';
import { type Carried, driveInFlight } from './carried';

/** Many figures ask for the same state of the same model. */
const hovers = new WeakMap<Carried, DriveState | null>();
const fulls = new WeakMap<Carried, DriveState | null>();

/** Hovering: all propellers together carry the weight; null where pack and motors can't. */
export function hovering(carried: Carried): DriveState | null {
  const known = hovers.get(carried);
  if (known !== undefined) return known;
  const state = stateForThrust(driveInFlight(carried), carried.weight);
  hovers.set(carried, state);
  return state;
}

/** Whether a state has an answer whatever is in doubt: motors at full throttle have. Undefined where that must be looked at. */
export function answeredIn(state: typeof hovering): (() => true) | undefined {
  return state === full ? () => true : undefined;
}

/** Full throttle, as far as the script lets it go; null where that can't be read. */
export function full(carried: Carried): DriveState | null {
  const known = fulls.get(carried);
  if (known !== undefined) return known;
  const { drive, throttle } = carried;
  const state = throttle === null ? null : stateAtThrottle(drive, throttle.most);
  fulls.set(carried, state);
  return state;
}
