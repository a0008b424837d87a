import { CraftView } from '../../server/src/craft/view';
import type { SimulatedCraft } from '../simulator/craft';
import { csvOf, type Layout } from '../simulator/csv';
import { layouts } from '../simulator/layouts';
import { type Act, flightOf } from '../simulator/pilot';
import { Random } from '../simulator/random';
import { canFly, type RandomCraft, randomCraft, randomRecorder } from '../simulator/random-craft';
import { type SimulatedFlight, simulated } from '../simulator/simulated-flight';
import { craftOf } from './findings';
import { scriptOf } from './plausible-craft';

/** A random craft, flown and written down. */
export interface RandomFlight extends SimulatedFlight {
  readonly seed: number;
  readonly craft: SimulatedCraft;
  readonly acts: readonly Act[];
  readonly layout: Layout;
  readonly rate: number;
  readonly bytes: Uint8Array;
  /** The script of a builder who knows the parts as they are printed. */
  readonly view: CraftView;
}

/** How the simulator numbers and turns its motors. */
const asFlown = ['motor.order = [front-left, front-right, rear-left, rear-right]', 'motor.spin = inward'];

/** What a seed gives. */
export function randomFlight(seed: number): RandomFlight {
  const random = new Random(seed);
  // Loggers write either a short time often, or a long time seldom.
  const isQuick = seed % 3 === 0;
  const { craft, numbers } = flyable(random, isQuick ? [1000, 1600, 2000] : [1000]);
  const seconds = isQuick ? random.between(17, 24) : random.between(22, 28);
  const rate = isQuick ? random.pick(350, 500) : random.pick(70, 90);
  const acts = flightOf(seconds, random.between(0.35, 1), random);
  const recorder = randomRecorder(craft.board.gyroRate, rate, seconds, random);
  const { rows, truth } = simulated(craft, acts, recorder, seed);
  const layout = layouts.get(random.pick('bracketed', 'bracketed', 'semicolons', 'unitless', 'repeated'));
  if (layout === undefined) throw new Error('a layout is missing');
  const view = new CraftView(craftOf(scriptOf(numbers, ...asFlown)), 'one');
  return { seed, craft, acts, layout, rate: recorder.rate, rows, truth, bytes: csvOf(rows, layout), view };
}

function flyable(random: Random, rates: readonly number[]): RandomCraft {
  for (;;) {
    const made = randomCraft(random, rates);
    if (canFly(made.craft)) return made;
  }
}
