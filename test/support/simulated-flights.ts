import { CraftView } from '../../server/src/craft/view';
import { limits, shaped } from '../simulator/controller';
import { axes, type SimulatedCraft } from '../simulator/craft';
import { csvOf, type Layout } from '../simulator/csv';
import { layouts } from '../simulator/layouts';
import { type Act, flightOf, steeredFlight, thumb } from '../simulator/pilot';
import { Random } from '../simulator/random';
import { canFly, type RandomCraft, randomCraft, randomRecorder } from '../simulator/random-craft';
import type { Recorder } from '../simulator/recorder';
import { type SimulatedFlight, simulated } from '../simulator/simulated-flight';
import { type BoardFactors, hoverOf } from '../simulator/tuned';
import { craftOf } from './findings';
import { scriptOf } from './plausible-craft';

/** A random craft, flown and written down. */
export interface RandomFlight extends SimulatedFlight {
  readonly seed: number;
  readonly craft: SimulatedCraft;
  /** What the board's own whole numbers stand for. */
  readonly factors: BoardFactors;
  readonly recorder: Recorder;
  readonly acts: readonly Act[];
  readonly layout: Layout;
  readonly rate: number;
  readonly bytes: Uint8Array;
  /** The script of a builder who knows the parts as they are printed. */
  readonly view: CraftView;
}

/** What a seed gives. */
export function randomFlight(seed: number): RandomFlight {
  const random = new Random(seed);
  // Loggers write either a short time often, or a long time seldom.
  const isQuick = seed % 3 === 0;
  const isSteered = isQuick && seed % 24 !== 0;
  const made = flyable(random, isQuick ? [1000, 1600, 2000] : [1000]);
  const { craft } = made;
  const seconds = isQuick && !isSteered ? random.between(17, 24) : random.between(22, 28);
  const rate = isQuick
    ? isSteered
      ? random.pick(500, 500, 1000)
      : random.pick(350, 500)
    : random.pick(70, 90);
  const acts = isSteered
    ? steeredFlight(seconds, steeringRates(craft, random), random)
    : flightOf(seconds, random.between(0.35, 1), random);
  const plain = randomRecorder(craft.board.gyroRate, rate, seconds, random);
  const recorder = isSteered ? { ...plain, ...skewOf(plain.rate, random) } : plain;
  const { rows, truth } = simulated(craft, acts, recorder, seed);
  const layout = layouts.get(
    isSteered
      ? random.pick('bracketed', 'bracketed', 'repeated')
      : random.pick('bracketed', 'bracketed', 'semicolons', 'unitless', 'repeated'),
  );
  if (layout === undefined) throw new Error('a layout is missing');
  return {
    seed,
    craft,
    factors: made.factors,
    acts,
    recorder,
    layout,
    rate: recorder.rate,
    rows,
    truth,
    bytes: csvOf(rows, layout),
    view: new CraftView(craftOf(scriptAsFlown(made)), 'one'),
  };
}

/** Of the range that the hover leaves to either side pilots who fly small steps use so much, and some use more. */
const small = 0.95;

/** How fast each axis is moved, rad/s: mostly no faster than its motors can follow. */
function steeringRates(craft: SimulatedCraft, random: Random): readonly number[] {
  const { gains, derivativeOf } = craft.board;
  const moved = [true, true, random.unit() < 0.5];
  const share = small * (random.unit() < 0.15 ? 3 : 1);
  const calm = hoverOf(craft).throttle;
  const room = Math.min(calm - craft.output.idle, 1 - calm);
  return axes.map((axis, index) => {
    const { proportional, derivative, feedforward } = gains[axis];
    // From one side to the other, as quickly as a thumb goes there.
    const kick = (feedforward + (derivativeOf === 'error' ? derivative : 0)) / thumb;
    const reach = (share * room) / (2 * (proportional + kick));
    const rate = Math.max(slowest, Math.min(random.between(1.5, 4.5) * (axis === 'yaw' ? 0.6 : 1), reach));
    return moved[index] ? rate : 0;
  });
}

/** Moves that are slower nobody would call moves, rad/s. */
const slowest = 0.5;

/** Columns of the same moment, or some a row behind the others. */
function skewOf(rate: number, random: Random): Pick<Recorder, 'wantedLate' | 'outputsLate'> {
  if (random.unit() < 0.7) return { wantedLate: 0, outputsLate: 0 };
  return { wantedLate: random.pick(0, 1 / rate), outputsLate: random.pick(0.5 / rate, 1 / rate) };
}

/** The script of its numbers, with what its controller really has. */
function scriptAsFlown({ numbers, craft }: RandomCraft): string {
  const { gains, derivativeOf, feedforwardFilters, fade, shape } = craft.board;
  const isReplaced = (line: string) => /^control\.(?:roll|pitch|yaw|integral-limit)\b/.test(line);
  const degree = Math.PI / 180;
  const [low] = feedforwardFilters;
  return [
    ...scriptOf(numbers)
      .split('\n')
      .filter((line) => !isReplaced(line)),
    ...axes.flatMap((axis) => [
      `control.${axis}.proportional = ${100 * degree * gains[axis].proportional} %/(deg/s)`,
      `control.${axis}.integral = ${100 * degree * gains[axis].integral} %/deg`,
      `control.${axis}.derivative = ${100 * degree * gains[axis].derivative} %/(deg/s^2)`,
      `control.${axis}.feedforward = ${100 * degree * gains[axis].feedforward} %/(deg/s^2)`,
      `control.${axis}.limit = ${100 * limits.whole} %`,
    ]),
    `control.integral-limit = ${100 * limits.integral} %`,
    `motor.idle = ${100 * craft.output.idle} %`,
    'motor.order = [front-left, front-right, rear-left, rear-right]',
    'motor.spin = inward',
    `derivative.input = ${derivativeOf === 'error' ? 'error' : 'turning-rate'}`,
    ...(low?.kind === 'first-order' ? [`control.feedforward-cutoff = ${low.cutoff} Hz`] : []),
    ...(fade === null
      ? []
      : [
          `control.when.high-throttle.from = ${100 * fade.from} %`,
          ...(['proportional', 'integral', 'derivative'] as const).map(
            (part) => `control.when.high-throttle.${part} = ${100 * fade[part]} %`,
          ),
        ]),
    ...(shape === 0
      ? []
      : [
          `motor.thrust-shape = ${Array.from({ length: 11 }, (_, step) => `${10 * step} % -> ${100 * shaped(shape, step / 10)} %`).join(', ')}`,
        ]),
  ].join('\n');
}

function flyable(random: Random, rates: readonly number[]): RandomCraft {
  for (;;) {
    const made = randomCraft(random, rates);
    if (canFly(made.craft)) return made;
  }
}
