import { axes, type SimulatedCraft } from './craft';
import { Chain } from './filters';

/** The sum of an axis can't ask for more than this share of the motors' range; its integral for no more than that. */
const limits = { whole: 0.6, integral: 0.3 };

/** A rate controller with proportional, integral and derivative on what is measured, and a mixer that keeps the craft
 * turning as asked before it keeps the throttle. */
export class Controller {
  /** What each motor is told, 0 to the most that any is told. */
  readonly outputs: Float64Array;
  readonly #held = new Float64Array(3);
  readonly #last = new Float64Array(3);
  readonly #asked = new Float64Array(3);
  readonly #derivative: Chain;

  constructor(readonly craft: SimulatedCraft) {
    this.outputs = new Float64Array(craft.motors.length);
    this.#derivative = new Chain(craft.board.derivativeFilters, craft.board.controlRate, craft.motors.length);
  }

  step(wanted: Float64Array, measured: Float64Array, speeds: Float64Array, throttle: number): void {
    const { gains, controlRate } = this.craft.board;
    this.#derivative.follow(speeds);
    for (let axis = 0; axis < 3; axis += 1) {
      const { proportional, integral, derivative } = gains[axes[axis]!];
      const error = wanted[axis]! - measured[axis]!;
      const held = throttle < 0.05 ? 0 : this.#held[axis]! + (integral * error) / controlRate;
      this.#held[axis] = clamped(held, limits.integral);
      const slope = this.#derivative.run(axis, (measured[axis]! - this.#last[axis]!) * controlRate);
      this.#last[axis] = measured[axis]!;
      const asked = proportional * error + this.#held[axis]! - derivative * slope;
      this.#asked[axis] = clamped(asked, limits.whole);
    }
    this.#mix(throttle);
  }

  #mix(throttle: number): void {
    const { motors } = this.craft;
    const { full } = this.craft.output;
    let [most, least] = [-1, 1];
    for (let motor = 0; motor < motors.length; motor += 1) {
      const { roll, pitch, yaw } = motors[motor]!.mix;
      const share = roll * this.#asked[0]! + pitch * this.#asked[1]! + yaw * this.#asked[2]!;
      this.outputs[motor] = share;
      if (share > most) most = share;
      if (share < least) least = share;
    }
    const base = Math.min(Math.max(throttle, -least), full - most);
    const level = most - least > full ? throttle : base;
    for (let motor = 0; motor < motors.length; motor += 1)
      this.outputs[motor] = Math.max(0, Math.min(full, level + this.outputs[motor]!));
  }
}

function clamped(value: number, limit: number): number {
  return Math.max(-limit, Math.min(limit, value));
}
