import { wholeTurn } from './craft';
import type { Random } from './random';

/** What is flown: one after the other. */
export type Act =
  | { readonly kind: 'off' | 'idle' | 'take-off' | 'hover' | 'land'; readonly seconds: number }
  /** The stick aside to one side and as long to the other, again and again, rad/s. */
  | { readonly kind: 'steps'; readonly axis: 0 | 1 | 2; readonly rate: number; readonly seconds: number }
  /** Aside, as long to the other side, and a rest, again and again: each as long as the next of the lengths, s. */
  | {
      readonly kind: 'moves';
      readonly axis: 0 | 1 | 2;
      readonly rate: number;
      readonly lengths: readonly number[];
      readonly seconds: number;
    }
  /** From slow to quick, Hz, in even octaves. */
  | {
      readonly kind: 'sweep';
      readonly axis: 0 | 1 | 2;
      readonly rate: number;
      readonly slow: number;
      readonly quick: number;
      readonly seconds: number;
    }
  /** The throttle up by a share, and as far below the hover to come back. */
  | { readonly kind: 'punch' | 'climb'; readonly throttle: number; readonly seconds: number };

export interface Felt {
  readonly roll: number;
  readonly pitch: number;
  readonly height: number;
  readonly climb: number;
}

/** Of a step of the sticks to one side, s. */
const stepLength = 0.22;
/** How a pilot levels what leans: rad/s a rad, and no faster than so. */
const levelling = { gain: 2.2, most: 1.6 };
/** Wished climb a metre of height (1/s, at most m/s), throttle a m/s, and its trim. */
const lifting = { gain: 0.9, most: 2.2, throttle: 0.09, trim: 0.06 };

/** A thumb moves the throttle by so much of its way a second. */
const quickest = 3;

/** Sticks of somebody who flies acts one after the other and keeps the craft level and low meanwhile. */
export class Pilot {
  readonly wanted = new Float64Array(3);
  throttle = 0;
  /** Whether the motors turn at all. */
  isArmed = false;
  /** The act that is flown. */
  act: Act['kind'] = 'off';
  #trim: number;

  constructor(
    readonly acts: readonly Act[],
    hoverThrottle: number,
    readonly unsteady: number,
    readonly random: Random,
  ) {
    this.#trim = hoverThrottle;
  }

  /** Looks and moves the sticks; once for each frame of the link. */
  look(time: number, felt: Felt, seconds: number): void {
    const [act, since] = actAt(this.acts, time);
    this.act = act.kind;
    this.isArmed = act.kind !== 'off';
    const level = (angle: number) =>
      Math.max(-levelling.most, Math.min(levelling.most, -levelling.gain * angle));
    const isFlying = act.kind !== 'off' && act.kind !== 'idle';
    this.wanted[0] = isFlying ? level(felt.roll) + this.unsteady * this.random.normal() : 0;
    this.wanted[1] = isFlying ? level(felt.pitch) + this.unsteady * this.random.normal() : 0;
    this.wanted[2] = 0;
    if (act.kind === 'steps') this.wanted[act.axis]! += act.rate * steppedAt(since);
    if (act.kind === 'moves') this.wanted[act.axis]! += act.rate * movedAt(act.lengths, since);
    if (act.kind === 'sweep') this.wanted[act.axis]! += act.rate * sweptAt(act, since);
    const asked = Math.max(0, Math.min(1, this.#throttleFor(act, since, felt, seconds)));
    const most = quickest * seconds;
    this.throttle += Math.max(-most, Math.min(most, asked - this.throttle));
  }

  #throttleFor(act: Act, since: number, felt: Felt, seconds: number): number {
    if (act.kind === 'off' || act.kind === 'idle') return 0;
    if (act.kind === 'punch' || act.kind === 'climb') {
      // Up, then down for longer, for a fall is slowed by the air; the last part brings it back by eye.
      const share = since / act.seconds;
      if (share < 0.35) return this.#trim + act.throttle;
      if (share < 0.65) return Math.max(0.06, this.#trim - 0.55 * act.throttle);
    }
    const goal = act.kind === 'land' ? Math.max(-0.5, 1.6 - 1.4 * since) : 1.6;
    const wished = Math.max(-lifting.most, Math.min(lifting.most, lifting.gain * (goal - felt.height)));
    const missing = wished - felt.climb;
    const isNear = Math.abs(missing) < 1;
    if (isNear) this.#trim += lifting.trim * missing * seconds;
    if (act.kind === 'land' && felt.height <= 0.02) return 0;
    return this.#trim + lifting.throttle * missing + 0.1 * this.unsteady * this.random.normal();
  }
}

function actAt(acts: readonly Act[], time: number): readonly [Act, number] {
  let since = time;
  for (const act of acts) {
    if (since < act.seconds) return [act, since];
    since -= act.seconds;
  }
  return [{ kind: 'off', seconds: 0 }, since];
}

/** Aside, back twice as far, aside: what it turned by is turned back. */
function steppedAt(since: number): number {
  const at = (since / stepLength) % 6;
  return at < 1 ? 1 : at < 3 ? -1 : at < 4 ? 1 : 0;
}

/** As long a thumb takes from the middle to a side, s: the quicker the shorter the move. */
function thumbFor(length: number): number {
  return 0.02 + 0.12 * length;
}

/** What most moves take. */
export const thumb = thumbFor(0.15);

/** Aside and back as `moves` has it; a thumb is not there at once. */
function movedAt(lengths: readonly number[], since: number): number {
  let [start, way] = [0, 1];
  for (const length of lengths) {
    const at = since - start;
    if (at < 3 * length) {
      const corners = [0, length, 2 * length].map((corner) =>
        Math.max(0, Math.min(1, (at - corner) / thumb)),
      );
      return way * (corners[0]! - 2 * corners[1]! + corners[2]!);
    }
    start += 3 * length;
    way = -way;
  }
  return 0;
}

/** A sine whose logarithm of frequency rises evenly: its phase is the integral of the frequency. */
function sweptAt({ slow, quick, seconds }: Extract<Act, { kind: 'sweep' }>, since: number): number {
  const octaves = Math.log(quick / slow);
  return Math.sin(wholeTurn * slow * (seconds / octaves) * (Math.exp((octaves * since) / seconds) - 1));
}

const up: readonly Act[] = [
  { kind: 'off', seconds: 0.5 },
  { kind: 'idle', seconds: 0.7 },
  { kind: 'take-off', seconds: 2.3 },
];
const down: readonly Act[] = [
  { kind: 'land', seconds: 2.5 },
  { kind: 'idle', seconds: 0.4 },
  { kind: 'off', seconds: 0.4 },
];

/** A flight of so many seconds with something of everything; `lively` from 0 (only hover) to 1. */
export function flightOf(seconds: number, lively: number, random: Random): readonly Act[] {
  const acts: Act[] = [...up];
  let left = seconds - [...acts, ...down].reduce((sum, act) => sum + act.seconds, 0);
  const rate = () => random.between(1.2, 3.5);
  for (let turn = 0; left > 0; turn += 1) {
    const act =
      turn % 2 === 0 ? calm(left, lively, random) : anAct(Math.floor(turn / 2), lively, rate(), random);
    acts.push({ ...act, seconds: Math.min(act.seconds, left) });
    left -= act.seconds;
  }
  return [...acts, ...down];
}

/** A flight on which one axis after the other is moved, at most so fast about each, rad/s; 0: it is left alone. */
export function steeredFlight(seconds: number, rates: readonly number[], random: Random): readonly Act[] {
  const moved = ([0, 1, 2] as const).filter((axis) => (rates[axis] ?? 0) > 0);
  const calm = 1;
  const climb: Act = { kind: 'climb', throttle: random.between(0.1, 0.2), seconds: 3 };
  const around = [...up, climb, ...down].reduce((sum, act) => sum + act.seconds, 0);
  const each = (seconds - around - calm * (moved.length + 1)) / moved.length;
  return [
    ...up,
    climb,
    { kind: 'hover', seconds: calm },
    ...moved.flatMap((axis): readonly Act[] => [
      movesOf(axis, rates[axis] ?? 0, each, random),
      { kind: 'hover', seconds: calm },
    ]),
    ...down,
  ];
}

/** Moves of all lengths for so many seconds. */
function movesOf(axis: 0 | 1 | 2, rate: number, seconds: number, random: Random): Act {
  const lengths: number[] = [];
  // Some pilots flick, some fly.
  const longest = random.pick(0.12, 0.3);
  for (let left = seconds; left > 0; left -= 3 * lengths.at(-1)!) lengths.push(random.factor(0.04, longest));
  return { kind: 'moves', axis, rate, lengths: lengths.slice(0, -1), seconds };
}

function calm(left: number, lively: number, random: Random): Act {
  return { kind: 'hover', seconds: Math.min(left, random.between(2, 4) / (0.2 + lively)) };
}

function anAct(turn: number, lively: number, rate: number, random: Random): Act {
  const throttle = lively * random.between(0.2, 0.4);
  switch (turn % 6) {
    case 0:
      return { kind: 'climb', throttle: 0.7 * throttle, seconds: random.between(6, 9) };
    case 1:
      return { kind: 'steps', axis: 0, rate: lively * rate, seconds: stepLength * 6 };
    case 2:
      return { kind: 'punch', throttle, seconds: random.between(2, 3) };
    case 3:
      return { kind: 'steps', axis: 1, rate: lively * rate, seconds: stepLength * 6 };
    case 4:
      return {
        kind: 'sweep',
        axis: random.pick(0, 1),
        rate: lively * rate,
        slow: 0.7,
        quick: 12,
        seconds: 6,
      };
    default:
      return { kind: 'steps', axis: 2, rate: 0.5 * lively * rate, seconds: stepLength * 6 };
  }
}
