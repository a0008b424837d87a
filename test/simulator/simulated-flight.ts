import type { SimulatedCraft } from './craft';
import { fly } from './flight';
import type { Act } from './pilot';
import { type Recorder, type Rows, RowTaker } from './recorder';
import { type Truth, TruthKeeper } from './truth';

/** A flight as it was written down, and what is true of it. */
export interface SimulatedFlight {
  readonly rows: Rows;
  readonly truth: Truth;
}

export function simulated(
  craft: SimulatedCraft,
  acts: readonly Act[],
  recorder: Recorder,
  seed: number,
): SimulatedFlight {
  const taker = new RowTaker(craft, recorder, seed);
  const keeper = new TruthKeeper(craft);
  fly(craft, acts, seed, (moment, step) => {
    taker.take(moment, step);
    keeper.watch(moment);
  });
  return { rows: taker.rows(), truth: keeper.truth() };
}
