/** Turns a second of a speed in rad/s. */
export function turnsPerSecond(speed: number): number {
  return speed / (2 * Math.PI);
}
