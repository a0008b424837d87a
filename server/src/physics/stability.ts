import { angle, type Complex, magnitude } from './complex';
import type { LoopCurve } from './loop-curve';

/**
 * Whether a loop that is closed comes to rest; `unanswered`: nothing in the band makes it swing, but its gain has not
 * fallen below 1 at the end, or never lay above it, so that nothing is told of it.
 */
export type LoopVerdict = 'calm' | 'swings' | 'unanswered';

/** A place on the loop: frequency in Hz, gain, and phase in rad, from −π to π. */
export interface LoopPlace {
  readonly frequency: number;
  readonly gain: number;
  readonly phase: number;
}

/** How a loop stands to swinging by itself. */
export interface Stability {
  readonly verdict: LoopVerdict;
  /** The least distance of the open loop from −1, and where; 1 over it is the peak of the sensitivity. */
  readonly nearest: { readonly distance: number; readonly frequency: number };
  /** Where the gain passes through 1, in rising order. */
  readonly crossovers: readonly LoopPlace[];
  /** Where the open loop passes through the negative real axis, in rising order. */
  readonly turns: readonly Turn[];
}

/** `way`: −1 where the phase falls through an odd number of half turns there, +1 where it rises. */
export interface Turn extends LoopPlace {
  readonly way: 1 | -1;
}

/**
 * Stability by the Nyquist count: the loop is calm where the open loop, which is calm itself, goes round −1 as often
 * one way as the other. Its way from frequency 0 to the first of the curve is taken from the phase there: one that
 * starts behind half a turn has gone through it.
 * Source: K. J. Åström and R. M. Murray, Feedback Systems, sections 10.2 and 10.3.
 */
export function stabilityOf(curve: LoopCurve): Stability {
  const crossovers: LoopPlace[] = [];
  const turns: Turn[] = [];
  let before: Point | null = null;
  for (const point of pointsOf(curve)) {
    if (before !== null) {
      if (before.gain >= 1 !== point.gain >= 1) crossovers.push(crossoverBetween(curve, before, point));
      const turn = turnBetween(curve, before, point);
      if (turn !== null) turns.push(turn);
    }
    before = point;
  }
  return {
    verdict: verdictOf(curve, crossovers, turns),
    nearest: nearestOf(curve, [...crossovers, ...turns]),
    crossovers,
    turns,
  };
}

function verdictOf(
  { values }: LoopCurve,
  crossovers: readonly LoopPlace[],
  turns: readonly Turn[],
): LoopVerdict {
  const [first] = values;
  const last = values.at(-1);
  if (first === undefined || last === undefined) return 'unanswered';
  // In the upper left quarter, an integrating loop has come round from below.
  const start = first.im > 0 && first.re < 0 && magnitude(first) >= 1 ? -1 : 0;
  const count = turns.reduce((sum, { gain, way }) => (gain >= 1 ? sum + way : sum), start);
  if (count !== 0) return 'swings';
  return magnitude(last) < 1 && crossovers.length > 0 ? 'calm' : 'unanswered';
}

interface Point {
  readonly frequency: number;
  readonly value: Complex;
  readonly gain: number;
}

function pointOf(frequency: number, value: Complex): Point {
  return { frequency, value, gain: magnitude(value) };
}

/** Below this gain nothing that the loop does counts. */
const faint = 0.05;
const mostHalvings = 6;

/** The points of a curve, with others between two that lie more than a quarter turn apart. */
function* pointsOf(curve: LoopCurve): Generator<Point> {
  let before: Point | null = null;
  for (const [step, frequency] of curve.frequencies.entries()) {
    const value = curve.values[step];
    if (value === undefined) return;
    const point = pointOf(frequency, value);
    if (before !== null) yield* between(curve, before, point, mostHalvings);
    yield point;
    before = point;
  }
}

function* between(curve: LoopCurve, one: Point, other: Point, depth: number): Generator<Point> {
  const apart = one.value.re * other.value.re + one.value.im * other.value.im < 0;
  if (!apart || depth === 0 || Math.max(one.gain, other.gain) < faint) return;
  const frequency = Math.sqrt(one.frequency * other.frequency);
  const middle = pointOf(frequency, curve.at(frequency));
  yield* between(curve, one, middle, depth - 1);
  yield middle;
  yield* between(curve, middle, other, depth - 1);
}

function crossoverBetween(curve: LoopCurve, one: Point, other: Point): LoopPlace {
  return placeBetween(curve, one, other, ({ gain }) => Math.log(gain));
}

function turnBetween(curve: LoopCurve, one: Point, other: Point): Turn | null {
  const [from, to] = [one.value, other.value];
  if (from.im < 0 === to.im < 0 || Math.max(one.gain, other.gain) < faint) return null;
  const across = (from.re * to.im - to.re * from.im) / (to.im - from.im);
  if (across >= 0) return null;
  const place = placeBetween(curve, one, other, ({ value, gain }) => value.im / gain);
  return { ...place, way: from.im < 0 ? -1 : 1 };
}

/** Closer than 0.01 % of gain or 0.006 degrees nobody needs to know a crossing. */
const closeEnough = 1e-4;
const mostTries = 40;

/**
 * Where a measure of two neighbouring points passes through 0, by false position with the weight of an end that
 * stays halved (Illinois method).
 * Source: M. Dowell and P. Jarratt, A modified regula falsi method, BIT 11 (1971), from memory.
 */
function placeBetween(
  curve: LoopCurve,
  one: Point,
  other: Point,
  measure: (point: Point) => number,
): LoopPlace {
  let [left, right] = [one, other];
  let [atLeft, atRight] = [measure(one), measure(other)];
  let found = one;
  for (let tries = 0; tries < mostTries; tries += 1) {
    const share = atLeft / (atLeft - atRight);
    const frequency = left.frequency * (right.frequency / left.frequency) ** share;
    found = pointOf(frequency, curve.at(frequency));
    const value = measure(found);
    if (Math.abs(value) < closeEnough) break;
    if (value > 0 === atLeft > 0) {
      [left, atLeft] = [found, value];
      atRight /= 2;
    } else {
      [right, atRight] = [found, value];
      atLeft /= 2;
    }
  }
  return { frequency: found.frequency, gain: found.gain, phase: angle(found.value) };
}

/** Of the curve's points, of where it passes gain 1 and half a turn, and of one between the nearest and its neighbours. */
function nearestOf(curve: LoopCurve, places: readonly LoopPlace[]): Stability['nearest'] {
  const { frequencies, values } = curve;
  let least = { distance: Number.POSITIVE_INFINITY, frequency: 0 };
  const look = (frequency: number, value: Complex) => {
    const distance = distanceOf(value);
    if (distance < least.distance) least = { distance, frequency };
  };
  for (const [step, value] of values.entries()) look(frequencies[step] ?? 0, value);
  const between = lowestBetween(curve, frequencies.indexOf(least.frequency));
  if (between !== null) look(between, curve.at(between));
  for (const { frequency, gain, phase } of places)
    look(frequency, { re: gain * Math.cos(phase), im: gain * Math.sin(phase) });
  return least;
}

/** Where a parabola through the squared distances of a point and its neighbours is lowest; null at an end. */
function lowestBetween({ frequencies, values }: LoopCurve, at: number): number | null {
  const [one, middle, other] = [at - 1, at, at + 1].map((step) => {
    const [frequency, value] = [frequencies[step], values[step]];
    return frequency === undefined || value === undefined
      ? null
      : { x: Math.log(frequency), y: distanceOf(value) ** 2 };
  });
  if (one == null || middle == null || other == null) return null;
  const [left, right] = [middle.x - one.x, other.x - middle.x];
  const [fall, rise] = [(middle.y - one.y) / left, (other.y - middle.y) / right];
  const bend = (rise - fall) / (left + right);
  const slope = (fall * right + rise * left) / (left + right);
  if (!(bend > 0)) return null;
  return Math.exp(middle.x + Math.max(-left, Math.min(right, -slope / (2 * bend))));
}

function distanceOf({ re, im }: Complex): number {
  return Math.sqrt((1 + re) * (1 + re) + im * im);
}

/** What is left before a loop that is calm swings. */
export interface Margins {
  /** The crossover at which the least is left of the phase, Hz. */
  readonly crossover: number;
  /** rad, above 0. */
  readonly phaseMargin: number;
  /** How many times more gain it takes to swing; null: no gain makes it swing in the band that was looked at. */
  readonly gainMargin: number | null;
  /** Hz */
  readonly gainMarginAt: number | null;
}

/**
 * The least phase margin of all crossovers and the least gain margin; null for a loop that is not calm: it has none.
 * Source: definitions, e.g. K. J. Åström and R. M. Murray, Feedback Systems, section 10.3.
 */
export function marginsOf({ verdict, crossovers, turns }: Stability): Margins | null {
  const [closest] = [...crossovers].sort((one, other) => phaseLeft(one) - phaseLeft(other));
  if (verdict !== 'calm' || closest === undefined) return null;
  const [first] = turns.filter(({ gain }) => gain < 1).sort((one, other) => other.gain - one.gain);
  return {
    crossover: closest.frequency,
    phaseMargin: phaseLeft(closest),
    gainMargin: first === undefined ? null : 1 / first.gain,
    gainMarginAt: first?.frequency ?? null,
  };
}

/** How far a phase between −π and π is from half a turn. */
function phaseLeft({ phase }: LoopPlace): number {
  return Math.PI - Math.abs(phase);
}

/**
 * How fast a loop swings that does: where it last turns over with a gain above 1, Hz; where it nears −1 most, if it
 * turned over below the band.
 */
export function swingOf({ turns, nearest }: Stability): number {
  return turns.findLast(({ gain, way }) => gain >= 1 && way < 0)?.frequency ?? nearest.frequency;
}
