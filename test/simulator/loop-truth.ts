import { type Complex, one, plus, sizeOf } from './complex';
import { wholeTurn } from './craft';
import type { LinearLoop } from './linear';

/** How a loop follows, and how far it is from swinging; null where the band does not hold it. */
export interface LoopTruth {
  /** Where 3 dB less than what is asked for comes, Hz. */
  readonly bandwidth: number | null;
  /** The most that comes of what is asked for. */
  readonly peak: number;
  /** Where the answer comes half a turn late, Hz, and how much later it comes from there to twice that, as a wait, s. */
  readonly halfTurn: number | null;
  readonly phaseDelay: number | null;
  readonly crossover: number | null;
  /** rad */
  readonly phaseMargin: number | null;
  readonly gainMargin: number | null;
  /** Where the open loop turns over, Hz. */
  readonly turning: number | null;
  readonly sensitivityPeak: number;
}

/** Where the open loop has so much phase left (rad), and its gain there; the last of the band, where it has all along. */
export function crossingWith(
  { open }: LinearLoop,
  margin: number,
  to: number,
): { readonly frequency: number; readonly gain: number } {
  const frequencies = alongBand(to, 80);
  const values = frequencies.map(open);
  const frequency = crossing(frequencies, unwrapped(values), margin - Math.PI) ?? to;
  return { frequency, gain: valueAt(frequencies, values.map(sizeOf), frequency) ?? 1 };
}

function alongBand(to: number, count: number): readonly number[] {
  return Array.from({ length: count }, (_, step) => lowest * (to / lowest) ** (step / (count - 1)));
}

/** Hz */
const lowest = 0.4;

/** By looking along the band in small steps. */
export function truthOf(loop: LinearLoop, to: number): LoopTruth {
  const frequencies = alongBand(to, 300);
  const closed = frequencies.map(loop.closed);
  const open = frequencies.map(loop.open);
  const [closedPhase, openPhase] = [unwrapped(closed), unwrapped(open)];
  const [closedSize, openSize] = [closed.map(sizeOf), open.map(sizeOf)];
  const at = (values: readonly number[], level: number) => crossing(frequencies, values, level);
  const halfTurn = at(closedPhase, -Math.PI);
  const late = halfTurn === null ? null : valueAt(frequencies, closedPhase, 2 * halfTurn);
  const crossover = at(openSize, 1);
  const turning = at(openPhase, -Math.PI);
  const left = crossover === null ? null : valueAt(frequencies, openPhase, crossover);
  const swinging = turning === null ? null : valueAt(frequencies, openSize, turning);
  return {
    bandwidth: at(closedSize, Math.SQRT1_2),
    peak: Math.max(...closedSize),
    halfTurn,
    phaseDelay: halfTurn === null || late === null ? null : (-late - Math.PI) / (2 * wholeTurn * halfTurn),
    crossover,
    phaseMargin: left === null ? null : Math.PI + left,
    gainMargin: swinging === null ? null : 1 / swinging,
    turning,
    sensitivityPeak: Math.max(...open.map((value) => 1 / sizeOf(plus(one, value)))),
  };
}

/** Where values that begin above a level first fall to it. */
function crossing(frequencies: readonly number[], values: readonly number[], level: number): number | null {
  const after = values.findIndex((value) => value < level);
  if (after < 1) return null;
  const share = (values[after - 1]! - level) / (values[after - 1]! - values[after]!);
  return frequencies[after - 1]! + share * (frequencies[after]! - frequencies[after - 1]!);
}

function valueAt(
  frequencies: readonly number[],
  values: readonly number[],
  frequency: number,
): number | null {
  const after = frequencies.findIndex((one) => one >= frequency);
  if (after < 1) return null;
  const share = (frequency - frequencies[after - 1]!) / (frequencies[after]! - frequencies[after - 1]!);
  return values[after - 1]! + share * (values[after]! - values[after - 1]!);
}

/** Phases without jumps; the first is taken for late where it is ahead by more than a quarter of a turn. */
function unwrapped(values: readonly Complex[]): readonly number[] {
  let last = 0;
  return values.map(({ re, im }, at) => {
    const own = Math.atan2(im, re);
    if (at === 0) last = own > wholeTurn / 4 ? own - wholeTurn : own;
    else last = own + wholeTurn * Math.round((last - own) / wholeTurn);
    return last;
  });
}
