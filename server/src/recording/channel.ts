import type { AxisName } from '../figures/axis-names';

/**
 * What a column of a recording can hold, and the unit that it is kept in: `gyro` after the board's own filters and
 * `unfiltered-gyro` before them, rad/s, with the signs of the craft script (right, nose up and clockwise are more);
 * `wanted` the rate that the sticks ask for, rad/s; `motor` what a motor is told, 0 at its idle end and 1 at full;
 * `speed` how it turns, rad/s; `throttle` from 0 to 1; `voltage` and `current` of the pack, V and A; `frames` the time
 * since the last control frame, s. Motors are numbered as in the craft script.
 */
export type Channel =
  | `${'gyro' | 'unfiltered-gyro' | 'wanted'}.${AxisName}`
  | `${'motor' | 'speed'}.${number}`
  | 'throttle'
  | 'voltage'
  | 'current'
  | 'frames';
