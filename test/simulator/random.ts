/**
 * Chance that a seed repeats: 32 bits of state, mixed by multiplications and shifts (a linear step with a scrambled
 * output; Knuth, The Art of Computer Programming, volume 2, section 3.2). Good enough to shake a craft with.
 */
export class Random {
  #state: number;
  #spare: number | null = null;

  constructor(seed: number) {
    this.#state = seed >>> 0;
    for (let warm = 0; warm < 4; warm += 1) this.unit();
  }

  /** From 0 to below 1. */
  unit(): number {
    this.#state = (this.#state + 0x9e37_79b9) >>> 0;
    let mixed = this.#state;
    mixed = Math.imul(mixed ^ (mixed >>> 16), 0x21f0_aaad);
    mixed = Math.imul(mixed ^ (mixed >>> 15), 0x735a_2d97);
    return ((mixed ^ (mixed >>> 15)) >>> 0) / 2 ** 32;
  }

  between(low: number, high: number): number {
    return low + (high - low) * this.unit();
  }

  /** As likely in each octave as in the next. */
  factor(low: number, high: number): number {
    return low * (high / low) ** this.unit();
  }

  pick<T>(...among: readonly T[]): T {
    return among[Math.floor(this.unit() * among.length)] as T;
  }

  /** Mean 0, deviation 1: the polar method (Knuth, volume 2, section 3.4.1). */
  normal(): number {
    if (this.#spare !== null) {
      const spare = this.#spare;
      this.#spare = null;
      return spare;
    }
    for (;;) {
      const x = 2 * this.unit() - 1;
      const y = 2 * this.unit() - 1;
      const square = x * x + y * y;
      if (square >= 1 || square === 0) continue;
      const scale = Math.sqrt((-2 * Math.log(square)) / square);
      this.#spare = y * scale;
      return x * scale;
    }
  }
}
