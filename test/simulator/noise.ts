import { type FrameTone, type Shaking, type SimulatedCraft, wholeTurn } from './craft';
import type { Random } from './random';

/** A part of the frame that noise rings: two poles, exact at its own frequency, scaled to deviation 1. */
class Ringing {
  readonly #near: number;
  readonly #far: number;
  readonly #gain: number;
  #last = 0;
  #before = 0;

  constructor({ frequency, damping }: FrameTone, rate: number) {
    const radius = Math.exp((-damping * wholeTurn * frequency) / rate);
    const angle = (wholeTurn * frequency) / rate;
    this.#near = 2 * radius * Math.cos(angle);
    this.#far = -radius * radius;
    // Variance of such a process: Box and Jenkins, Time Series Analysis, section on second-order autoregression.
    const square = radius * radius;
    const variance = (1 + square) / ((1 - square) * ((1 + square) ** 2 - this.#near * this.#near));
    this.#gain = 1 / Math.sqrt(variance);
  }

  next(random: Random): number {
    const value = this.#near * this.#last + this.#far * this.#before + this.#gain * random.normal();
    this.#before = this.#last;
    this.#last = value;
    return value;
  }
}

/** All that the gyro sees beside how the craft turns: the sensor itself, the air, the frame, each motor's tones. */
export class GyroNoise {
  readonly #shaking: Shaking;
  readonly #rings: readonly Ringing[];
  readonly #phases: Float64Array;
  readonly #directions: Float64Array;
  readonly #root: number;

  constructor(
    readonly craft: SimulatedCraft,
    readonly hoverSpeed: number,
    readonly random: Random,
  ) {
    const { gyroRate } = craft.board;
    this.#shaking = craft.shaking;
    this.#rings = craft.shaking.frame.map((tone) => new Ringing(tone, gyroRate));
    this.#phases = Float64Array.from(craft.motors, () => wholeTurn * random.unit());
    this.#directions = Float64Array.from(craft.motors, () => wholeTurn * random.unit());
    // White noise of a density fills half of the rate of samples.
    this.#root = Math.sqrt(gyroRate / 2);
  }

  /** Adds to the three axes what is seen in a sample; `loud` is 1 in the hover. */
  addTo(seen: Float64Array, speeds: Float64Array, loud: number, seconds: number): void {
    const { sensor, air } = this.#shaking;
    const white = this.#root * Math.sqrt(sensor * sensor + air * air * loud * loud);
    for (let axis = 0; axis < 3; axis += 1) seen[axis]! += white * this.random.normal();
    for (let index = 0; index < this.#rings.length; index += 1) {
      const value = loud * this.#rings[index]!.next(this.random);
      const { strength } = this.#shaking.frame[index]!;
      seen[0]! += value * strength.roll;
      seen[1]! += value * strength.pitch;
      seen[2]! += value * strength.yaw;
    }
    const { blades } = this.craft.propeller;
    for (let motor = 0; motor < speeds.length; motor += 1) {
      const phase = this.#phases[motor]! + speeds[motor]! * seconds;
      this.#phases[motor] = phase > 1e4 * wholeTurn ? phase - 1e4 * wholeTurn : phase;
      const { shaftTone, bladeTone } = this.craft.motors[motor]!;
      const share = speeds[motor]! / this.hoverSpeed;
      const turned = phase + this.#directions[motor]!;
      const shaft = shaftTone * share * share;
      const blade = bladeTone * share * share * Math.sin(blades * turned);
      // A weight that goes round shakes roll and pitch a quarter of a turn apart.
      seen[0]! += shaft * Math.sin(turned) + blade;
      seen[1]! += shaft * Math.cos(turned) + 0.7 * blade;
      seen[2]! += 0.3 * shaft * Math.sin(turned + 1) + 0.2 * blade;
    }
  }
}
