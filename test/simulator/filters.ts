import type { SimulatedFilter } from './craft';
import { wholeTurn } from './craft';

/** One filter of second order on three axes at once: direct form, transposed (any textbook of digital filters). */
export class Biquad {
  #b0 = 1;
  #b1 = 0;
  #b2 = 0;
  #a1 = 0;
  #a2 = 0;
  readonly #first = new Float64Array(3);
  readonly #second = new Float64Array(3);

  /** Butterworth of second order by the bilinear transformation, Hz. */
  butterworth(cutoff: number, rate: number): this {
    const k = Math.tan((Math.PI * cutoff) / rate);
    const scale = 1 / (1 + Math.SQRT2 * k + k * k);
    [this.#b0, this.#b1, this.#b2] = [k * k * scale, 2 * k * k * scale, k * k * scale];
    [this.#a1, this.#a2] = [2 * (k * k - 1) * scale, (1 - Math.SQRT2 * k + k * k) * scale];
    return this;
  }

  firstOrder(cutoff: number, rate: number): this {
    const k = Math.tan((Math.PI * cutoff) / rate);
    [this.#b0, this.#b1, this.#b2] = [k / (1 + k), k / (1 + k), 0];
    [this.#a1, this.#a2] = [(k - 1) / (1 + k), 0];
    return this;
  }

  /** Nothing at the centre, half of the power at either end of the width (Regalia and Mitra, 1988), Hz. */
  notch(centre: number, width: number, rate: number): this {
    const k = Math.tan((Math.PI * width) / rate);
    const c = -2 * Math.cos((wholeTurn * centre) / rate);
    [this.#b0, this.#b1, this.#b2] = [1 / (1 + k), c / (1 + k), 1 / (1 + k)];
    [this.#a1, this.#a2] = [c / (1 + k), (1 - k) / (1 + k)];
    return this;
  }

  run(axis: number, value: number): number {
    const out = this.#b0 * value + this.#first[axis]!;
    this.#first[axis] = this.#b1 * value - this.#a1 * out + this.#second[axis]!;
    this.#second[axis] = this.#b2 * value - this.#a2 * out;
    return out;
  }
}

/** Notches at the first tones of each motor; they let pass what lies below `from`. */
class FollowingNotches {
  readonly #notches: Biquad[] = [];

  constructor(
    readonly tones: number,
    readonly from: number,
    readonly width: number,
    readonly rate: number,
    motors: number,
  ) {
    for (let count = 0; count < tones * motors; count += 1) this.#notches.push(new Biquad());
  }

  follow(speeds: Float64Array): void {
    for (let motor = 0; motor < speeds.length; motor += 1)
      for (let tone = 0; tone < this.tones; tone += 1) {
        const frequency = Math.max(this.from, ((tone + 1) * speeds[motor]!) / wholeTurn);
        if (frequency < 0.48 * this.rate)
          this.#notches[motor * this.tones + tone]!.notch(frequency, this.width, this.rate);
      }
  }

  run(axis: number, value: number): number {
    let left = value;
    for (const notch of this.#notches) left = notch.run(axis, left);
    return left;
  }
}

/** The filters of a board, one after the other. */
export class Chain {
  readonly #following: FollowingNotches[] = [];
  readonly #all: (Biquad | FollowingNotches)[] = [];

  constructor(filters: readonly SimulatedFilter[], rate: number, motors: number) {
    for (const filter of filters) {
      if (filter.kind === 'butterworth') this.#all.push(new Biquad().butterworth(filter.cutoff, rate));
      else if (filter.kind === 'first-order') this.#all.push(new Biquad().firstOrder(filter.cutoff, rate));
      else if (filter.kind === 'notch') this.#all.push(new Biquad().notch(filter.centre, filter.width, rate));
      else {
        const following = new FollowingNotches(filter.tones, filter.from, filter.width, rate, motors);
        this.#following.push(following);
        this.#all.push(following);
      }
    }
  }

  /** What the motors' controllers say of their speeds, rad/s. */
  follow(speeds: Float64Array): void {
    for (const following of this.#following) following.follow(speeds);
  }

  run(axis: number, value: number): number {
    let left = value;
    for (const filter of this.#all) left = filter.run(axis, left);
    return left;
  }
}
