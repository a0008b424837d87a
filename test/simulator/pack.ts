import type { SimulatedPack } from './craft';

/** A pack under a load that changes: what it gives at once, and what sinks slowly behind it. */
export class PackInFlight {
  #quick = 0;
  #slow = 0;
  /** C */
  drawn = 0;

  readonly #quickShare: number;
  readonly #slowShare: number;

  constructor(
    readonly pack: SimulatedPack,
    readonly seconds: number,
  ) {
    this.#quickShare = 1 - Math.exp(-seconds / pack.quick.seconds);
    this.#slowShare = 1 - Math.exp(-seconds / pack.slow.seconds);
  }

  /** Without a load, V, by the charge that is left: straight lines through the table. */
  open(): number {
    const { open, capacity, used } = this.pack;
    const at = Math.min(1, used + this.drawn / capacity) * (open.length - 1);
    const below = Math.min(open.length - 2, Math.floor(at));
    return open[below]! + (at - below) * (open[below + 1]! - open[below]!);
  }

  /** What its terminals show with a current, V. */
  voltage(current: number): number {
    return this.open() - this.pack.atOnce * current - this.#quick - this.#slow;
  }

  /** So many amperes for one step. */
  step(current: number): void {
    const { quick, slow } = this.pack;
    this.#quick += (quick.resistance * current - this.#quick) * this.#quickShare;
    this.#slow += (slow.resistance * current - this.#slow) * this.#slowShare;
    this.drawn += current * this.seconds;
  }
}

/** How many ohms a load has come up to after so many seconds. */
export function resistanceAfter({ atOnce, quick, slow }: SimulatedPack, seconds: number): number {
  const risen = (part: SimulatedPack['quick']) => part.resistance * (1 - Math.exp(-seconds / part.seconds));
  return atOnce + risen(quick) + risen(slow);
}
