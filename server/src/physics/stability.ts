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
  /**
   * Where the open loop passes through the negative real axis, in rising order. Faint ones only as long as none has
   * told the gain margin: of them all, it is the strongest below 1.
   */
  readonly turns: readonly Turn[];
}

/** `way`: −1 where the phase falls through an odd number of half turns there, +1 where it rises. */
export interface Turn extends LoopPlace {
  readonly way: 1 | -1;
}

/**
 * Stability by the Nyquist count: the loop is calm where the open loop, which is calm itself, goes round −1 as often
 * one way as the other. Its way from frequency 0 to the first of the curve is taken from the phase there: one that
 * starts behind half a turn has gone through it. `tries`: how closely places are looked for.
 * Source: K. J. Åström and R. M. Murray, Feedback Systems, sections 10.2 and 10.3.
 */
export function stabilityOf(curve: LoopCurve, tries = exactly): Stability {
  const search: Search = { curve, crossovers: [], turns: [] };
  const closely: Thoroughness = { tries, halvings: mostHalvings };
  const { frequencies, re, im } = curve;
  // Without a list in the loop: tens of curves of a hundred points pass here for each sheet.
  let fromRe = re[0] ?? 0;
  let fromIm = im[0] ?? 0;
  for (let step = 1; step < frequencies.length; step += 1) {
    const toRe = re[step] ?? 0;
    const toIm = im[step] ?? 0;
    const one = fromRe * fromRe + fromIm * fromIm;
    const other = toRe * toRe + toIm * toIm;
    const isCrossed = one >= 1 !== other >= 1 || fromIm < 0 !== toIm < 0;
    // Most stretches pass nothing: no more is done for them.
    if (isCrossed || fromRe * toRe + fromIm * toIm < 0) {
      const isFaint = Math.max(one, other) < faint * faint;
      if (!isFaint || search.turns.every(({ gain }) => gain < faint || gain >= 1))
        searchBetween(
          search,
          pointOf(frequencies[step - 1] ?? 0, { re: fromRe, im: fromIm }),
          pointOf(frequencies[step] ?? 0, { re: toRe, im: toIm }),
          isFaint ? faintly : closely,
        );
    }
    fromRe = toRe;
    fromIm = toIm;
  }
  const { crossovers, turns } = search;
  const nearest = nearestOf(curve, [...crossovers, ...turns]);
  return { verdict: verdictOf(curve, crossovers, turns), nearest, crossovers, turns };
}

function verdictOf(
  { re, im }: LoopCurve,
  crossovers: readonly LoopPlace[],
  turns: readonly Turn[],
): LoopVerdict {
  const [firstRe = 0] = re;
  const [firstIm = 0] = im;
  // In the upper left quarter, an integrating loop has come round from below.
  const start = firstIm > 0 && firstRe < 0 && Math.hypot(firstRe, firstIm) >= 1 ? -1 : 0;
  const count = turns.reduce((sum, { gain, way }) => (gain >= 1 ? sum + way : sum), start);
  if (count !== 0) return 'swings';
  const isFaint = Math.hypot(re.at(-1) ?? 1, im.at(-1) ?? 0) < 1;
  return isFaint && crossovers.length > 0 ? 'calm' : 'unanswered';
}

interface LoopPoint {
  readonly frequency: number;
  readonly value: Complex;
  readonly gain: number;
}

function pointOf(frequency: number, value: Complex): LoopPoint {
  return { frequency, value, gain: magnitude(value) };
}

/** Below this gain nobody needs to know what a loop does exactly. */
const faint = 0.05;
const mostHalvings = 6;

/** How often a crossing between two points is looked at. */
interface Thoroughness {
  readonly tries: number;
  /** How often at most a stretch is halved along which the loop turns by more than a quarter. */
  readonly halvings: number;
}

/** What has been found so far along a curve. */
interface Search {
  readonly curve: LoopCurve;
  readonly crossovers: LoopPlace[];
  readonly turns: Turn[];
}

/** What lies between two points; others are looked at between those that are more than a quarter turn apart. */
function searchBetween(search: Search, one: LoopPoint, other: LoopPoint, how: Thoroughness): void {
  const { curve, crossovers, turns } = search;
  const { tries, halvings } = how;
  const isNear = one.value.re * other.value.re + one.value.im * other.value.im >= 0;
  if (!isNear && halvings > 0) {
    const frequency = Math.sqrt(one.frequency * other.frequency);
    const middle = pointOf(frequency, curve.at(frequency));
    const halved = { tries, halvings: halvings - 1 };
    searchBetween(search, one, middle, halved);
    searchBetween(search, middle, other, halved);
    return;
  }
  if (one.gain >= 1 !== other.gain >= 1) crossovers.push(crossoverBetween(curve, one, other, tries));
  const turn = turnBetween(curve, one, other, tries);
  if (turn !== null) turns.push(turn);
}

function crossoverBetween(curve: LoopCurve, one: LoopPoint, other: LoopPoint, tries: number): LoopPlace {
  return placeBetween(curve, one, other, tries, ({ gain }) => Math.log(gain));
}

function turnBetween(curve: LoopCurve, one: LoopPoint, other: LoopPoint, tries: number): Turn | null {
  const [from, to] = [one.value, other.value];
  if (from.im < 0 === to.im < 0) return null;
  const across = (from.re * to.im - to.re * from.im) / (to.im - from.im);
  if (across >= 0) return null;
  const { frequency, gain, phase } = placeBetween(
    curve,
    one,
    other,
    tries,
    (point) => point.value.im / point.gain,
  );
  return { frequency, gain, phase, way: from.im < 0 ? -1 : 1 };
}

/** Closer than 0.01 % of gain or 0.006 degrees nobody needs to know a crossing. */
const closeEnough = 1e-4;
/** How often a crossing is looked at until it is that close, and for those that are weighed against it. */
const exactly = 40;
export const nearly = 1;
export const roughly = 0;
const faintly: Thoroughness = { tries: roughly, halvings: 0 };

/**
 * Where a measure of two neighbouring points passes through 0, by false position with the weight of an end that
 * stays halved (Illinois method).
 * Source: M. Dowell and P. Jarratt, A modified regula falsi method, BIT 11 (1971), from memory.
 */
function placeBetween(
  curve: LoopCurve,
  one: LoopPoint,
  other: LoopPoint,
  most: number,
  measure: (point: LoopPoint) => number,
): LoopPlace {
  let [left, right] = [one, other];
  let [atLeft, atRight] = [measure(one), measure(other)];
  if (most === roughly) return placeAt(one, other, atLeft / (atLeft - atRight));
  let found = one;
  for (let tries = 0; tries < most; tries += 1) {
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

/** On the way from one point to another as gain and phase go evenly there. */
function placeAt(one: LoopPoint, other: LoopPoint, share: number): LoopPlace {
  const [from, to] = [one.value, other.value];
  const apart = Math.atan2(from.re * to.im - from.im * to.re, from.re * to.re + from.im * to.im);
  const phase = angle(from) + share * apart;
  return {
    frequency: one.frequency * (other.frequency / one.frequency) ** share,
    gain: one.gain * (other.gain / one.gain) ** share,
    phase: phase > Math.PI ? phase - 2 * Math.PI : phase < -Math.PI ? phase + 2 * Math.PI : phase,
  };
}

/** Of the curve's points, of where it passes gain 1 and half a turn, and of one between the nearest and its neighbours. */
function nearestOf(curve: LoopCurve, places: readonly LoopPlace[]): Stability['nearest'] {
  const { frequencies, re, im } = curve;
  let closest = Number.POSITIVE_INFINITY;
  let at = 0;
  for (let step = 0; step < frequencies.length; step += 1) {
    const ahead = 1 + (re[step] ?? 0);
    const aside = im[step] ?? 0;
    const square = ahead * ahead + aside * aside;
    if (square >= closest) continue;
    closest = square;
    at = step;
  }
  let least = { distance: Math.sqrt(closest), frequency: frequencies[at] ?? 0 };
  const look = (frequency: number, value: Complex) => {
    const distance = distanceOf(value);
    if (distance < least.distance) least = { distance, frequency };
  };
  const between = lowestBetween(curve, at);
  if (between !== null) look(between, curve.at(between));
  for (const { frequency, gain, phase } of places)
    look(frequency, { re: gain * Math.cos(phase), im: gain * Math.sin(phase) });
  return least;
}

/** Where a parabola through the squared distances of a point and its neighbours is lowest; null at an end. */
function lowestBetween({ frequencies, re, im }: LoopCurve, at: number): number | null {
  if (at < 1 || at + 1 >= frequencies.length) return null;
  const x = (step: number) => Math.log(frequencies[step] ?? 1);
  const y = (step: number) => distanceOf({ re: re[step] ?? 0, im: im[step] ?? 0 }) ** 2;
  const middle = x(at);
  const [left, right] = [middle - x(at - 1), x(at + 1) - middle];
  const [fall, rise] = [(y(at) - y(at - 1)) / left, (y(at + 1) - y(at)) / right];
  const bend = (rise - fall) / (left + right);
  const slope = (fall * right + rise * left) / (left + right);
  return bend > 0 ? Math.exp(middle + Math.max(-left, Math.min(right, -slope / (2 * bend)))) : null;
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
  const closest = highestBy(crossovers, (place) => -phaseLeft(place));
  if (verdict !== 'calm' || closest === undefined) return null;
  const first = highestBy(turns, ({ gain }) => (gain < 1 ? gain : Number.NEGATIVE_INFINITY));
  return {
    crossover: closest.frequency,
    phaseMargin: phaseLeft(closest),
    gainMargin: first === undefined ? null : 1 / first.gain,
    gainMarginAt: first?.frequency ?? null,
  };
}

/** The first of those that measure most; undefined where none measures anything. */
function highestBy<T>(places: readonly T[], measure: (place: T) => number): T | undefined {
  let highest: T | undefined;
  let most = Number.NEGATIVE_INFINITY;
  for (const place of places) {
    const measured = measure(place);
    if (measured > most) [highest, most] = [place, measured];
  }
  return highest;
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
