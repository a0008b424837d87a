import { axes, type GainFade, type SimulatedCraft } from './craft';
import { Chain } from './filters';

/** The sum of an axis can't ask for more than this share of the motors' range; its integral for no more than that. */
export const limits = { whole: 0.6, integral: 0.3 };

/** A rate controller with proportional, integral, derivative and feedforward, and a mixer that keeps the craft turning
 * as asked before it keeps the throttle. */
export class Controller {
  /** What each motor is told, 0 to the most that any is told. */
  readonly outputs: Float64Array;
  readonly #held = new Float64Array(3);
  readonly #last = new Float64Array(3);
  readonly #lastWanted = new Float64Array(3);
  readonly #asked = new Float64Array(3);
  readonly #derivative: Chain;
  readonly #feedforward: Chain;

  constructor(readonly craft: SimulatedCraft) {
    const { derivativeFilters, feedforwardFilters, controlRate } = craft.board;
    this.outputs = new Float64Array(craft.motors.length);
    this.#derivative = new Chain(derivativeFilters, controlRate, craft.motors.length);
    this.#feedforward = new Chain(feedforwardFilters, controlRate, craft.motors.length);
  }

  step(wanted: Float64Array, measured: Float64Array, speeds: Float64Array, throttle: number): void {
    const { gains, controlRate, derivativeOf, fade } = this.craft.board;
    const left = fadedAt(fade, throttle);
    this.#derivative.follow(speeds);
    for (let axis = 0; axis < 3; axis += 1) {
      const { proportional, integral, derivative, feedforward } = gains[axes[axis]!];
      const error = wanted[axis]! - measured[axis]!;
      const held = throttle < 0.05 ? 0 : this.#held[axis]! + (left.integral * integral * error) / controlRate;
      this.#held[axis] = clamped(held, limits.integral);
      const looked = derivativeOf === 'error' ? -error : measured[axis]!;
      const slope = this.#derivative.run(axis, (looked - this.#last[axis]!) * controlRate);
      this.#last[axis] = looked;
      const moved = (wanted[axis]! - this.#lastWanted[axis]!) * controlRate;
      const ahead = feedforward === 0 ? 0 : feedforward * this.#feedforward.run(axis, moved);
      this.#lastWanted[axis] = wanted[axis]!;
      const sprung = left.proportional * proportional * error + this.#held[axis]!;
      this.#asked[axis] = clamped(sprung - left.derivative * derivative * slope + ahead, limits.whole);
    }
    this.#mix(throttle);
  }

  #mix(throttle: number): void {
    const { motors, board } = this.craft;
    const { full } = this.craft.output;
    let [most, least] = [-1, 1];
    for (let motor = 0; motor < motors.length; motor += 1) {
      const { roll, pitch, yaw } = motors[motor]!.mix;
      const share = roll * this.#asked[0]! + pitch * this.#asked[1]! + yaw * this.#asked[2]!;
      this.outputs[motor] = share;
      if (share > most) most = share;
      if (share < least) least = share;
    }
    const top = unshaped(board.shape, full);
    const base = Math.min(Math.max(throttle, -least), top - most);
    const level = most - least > top ? throttle : base;
    for (let motor = 0; motor < motors.length; motor += 1)
      this.outputs[motor] = Math.max(0, Math.min(full, shaped(board.shape, level + this.outputs[motor]!)));
  }
}

const unfaded = { proportional: 1, integral: 1, derivative: 1 };

/** Which shares of the gains count at a throttle. */
export function fadedAt(fade: GainFade | null, throttle: number): Omit<GainFade, 'from'> {
  if (fade === null || throttle <= fade.from) return unfaded;
  const way = Math.min(1, (throttle - fade.from) / (1 - fade.from));
  const share = (full: number) => 1 + way * (full - 1);
  return {
    proportional: share(fade.proportional),
    integral: share(fade.integral),
    derivative: share(fade.derivative),
  };
}

/** What a motor is told for a share of thrust that is asked: k o² + (1 − k) o = asked, solved for o. */
export function shaped(shape: number, asked: number): number {
  if (shape === 0 || asked <= 0) return asked;
  return (Math.sqrt((1 - shape) ** 2 + 4 * shape * asked) - (1 - shape)) / (2 * shape);
}

/** What was asked of a motor that is told so much. */
export function unshaped(shape: number, told: number): number {
  return told <= 0 ? told : shape * told * told + (1 - shape) * told;
}

function clamped(value: number, limit: number): number {
  return Math.max(-limit, Math.min(limit, value));
}
