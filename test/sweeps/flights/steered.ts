import { sizeOf } from '../../simulator/complex';
import { axes, type PerAxis, wholeTurn } from '../../simulator/craft';
import { leverage } from '../../simulator/flight';
import { axisIndex, type LinearLoop, linearLoop, waiting } from '../../simulator/linear';
import { type LoopTruth, truthOf } from '../../simulator/loop-truth';
import type { RandomFlight } from '../../support/simulated-flights';

export type Axis = keyof PerAxis;

/** How a flight steered an axis, by what the simulator knows of it. */
export interface Steered {
  readonly axis: Axis;
  readonly loop: LinearLoop;
  readonly truth: LoopTruth;
  /** Of the same loop that waits so many seconds longer. */
  readonly waiting: (seconds: number) => LoopTruth;
  /** What the sticks asked for while they moved it, rad/s rms. */
  readonly asked: number;
  /** Share of that time in which a motor was at a limit. */
  readonly limited: number;
  /** The share of what the gyro says at a frequency (Hz) that follows from what was asked for; gusts and noise are the rest. */
  readonly coherence: (frequency: number) => number;
}

const known = new WeakMap<RandomFlight, Steered | null>();

/** One of the axes that were steered, another in each flight; null in a flight that steers none. */
export function steeredOf(flight: RandomFlight): Steered | null {
  const found = known.get(flight);
  if (found !== undefined) return found;
  const made = lookedAt(flight);
  known.set(flight, made);
  return made;
}

function lookedAt(flight: RandomFlight): Steered | null {
  const { acts, craft, truth, rows, rate } = flight;
  const moved = acts.flatMap((act) => (act.kind === 'moves' ? [act.axis] : []));
  const index = moved[Math.floor(flight.seed / 3) % Math.max(1, moved.length)];
  const axis = index === undefined ? undefined : axes[index];
  if (axis === undefined || index === undefined) return null;
  const loop = linearLoop(craft, axisIndex[axis], truth.flown);
  const highest = Math.min(200, 0.45 * craft.board.controlRate);
  const wanted = rows.columns.get(`wanted.${axis}`) ?? new Float64Array(0);
  const [from, to] = whenMoved(flight, index);
  const during = wanted.subarray(from, to);
  const asked = Math.sqrt(during.reduce((sum, value) => sum + value ** 2, 0) / during.length);
  return {
    axis,
    loop,
    truth: truthOf(loop, highest),
    waiting: (seconds) => truthOf(waiting(loop, seconds), highest),
    asked,
    limited: limitedIn(flight, from, to),
    coherence: (frequency) => {
      const answered = sizeOf(loop.closed(frequency)) ** 2 * densityAt(during, rate, frequency);
      return answered / (answered + noiseAt(flight, index, loop, frequency));
    },
  };
}

/** Rows in which an axis was moved. */
function whenMoved({ acts, rows }: RandomFlight, axis: number): readonly [from: number, to: number] {
  const time = rows.columns.get('time') ?? new Float64Array(0);
  let start = 0;
  for (const act of acts) {
    if (act.kind === 'moves' && act.axis === axis) break;
    start += act.seconds;
  }
  const seconds = acts.find((act) => act.kind === 'moves' && act.axis === axis)?.seconds ?? 0;
  const row = (at: number) => {
    const after = time.findIndex((one) => one >= at);
    return after < 0 ? time.length : after;
  };
  return [row(start), row(start + seconds)];
}

function limitedIn({ craft, rows }: RandomFlight, from: number, to: number): number {
  const outputs = craft.motors.map((_, motor) => rows.columns.get(`motor.${motor + 1}`));
  let limited = 0;
  for (let row = from; row < to; row += 1)
    if (outputs.some((values) => isEnd(values?.[row] ?? 0, craft.output))) limited += 1;
  return limited / (to - from);
}

function isEnd(output: number, { idle, full }: RandomFlight['craft']['output']): boolean {
  return output <= idle || output >= full;
}

/** Of what was asked for, (rad/s)²/Hz, the mean of some bins about a frequency: plain sums of sines. */
function densityAt(values: Float64Array, rate: number, frequency: number): number {
  const size = Math.min(values.length, Math.round(2 * rate));
  const bins = [-1, 0, 1].map((bin) => frequency + bin / 2);
  let [sum, count] = [0, 0];
  for (let start = 0; start + size <= values.length; start += Math.round(size / 2))
    for (const bin of bins) {
      let [re, im] = [0, 0];
      for (let at = 0; at < size; at += 1) {
        const value = Math.sin((Math.PI * at) / size) ** 2 * values[start + at]!;
        re += value * Math.cos((wholeTurn * bin * at) / rate);
        im += value * Math.sin((wholeTurn * bin * at) / rate);
      }
      // Σw² of this window is 3/8 of its length.
      sum += (2 * (re * re + im * im)) / (rate * 0.375 * size);
      count += 1;
    }
  return sum / count;
}

/** What gusts, air and sensor come to behind the filters with the loop closed, (rad/s)²/Hz; tones stand elsewhere. */
function noiseAt({ craft }: RandomFlight, axis: number, loop: LinearLoop, frequency: number): number {
  const { shaking, wind } = craft;
  const pulse = wholeTurn * frequency;
  const gust = wind.torque * (leverage(craft)[axis] ?? 0);
  const gusts = (4 * gust * gust * wind.seconds) / (1 + (pulse * wind.seconds) ** 2);
  const turned = gusts / (pulse * craft.inertia[axes[axis] ?? 'roll']) ** 2;
  const floor = shaking.sensor ** 2 + shaking.air ** 2;
  const open = loop.open(frequency);
  const closed = 1 / Math.hypot(1 + open.re, open.im);
  return (turned + floor) * (sizeOf(loop.seen(frequency)) * closed) ** 2;
}
