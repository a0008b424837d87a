/** Where every movable stands: a place in its list of values. */
export type Setup = readonly number[];

/** What a setup comes to, as far as it is weighed. */
export interface Worth {
  readonly delay: number;
  readonly noise: number;
  /** By how much it misses what must hold and is cheaply told; 0: it holds. */
  readonly missed: number;
}

/** Setups to search among. */
export interface Space {
  /** How many values each movable has. */
  readonly sizes: readonly number[];
  readonly start: Setup;
  weigh(setup: Setup): Worth;
  /** Whether what takes longer to tell holds as well. */
  isSound(setup: Setup): boolean;
}

/** What is to be least, lower is better; null: not within the goal's own bound. */
export type Goal = (weighed: Worth) => number | null;

/** The delay; of setups that delay as little, the quietest. */
export const leastDelay: Goal = ({ delay, noise }) => delay + 1e-4 * noise;

/** The noise, with no more delay than this (ms); of setups that are as quiet, the one that delays least. */
export function quietestWithin(most: number): Goal {
  return ({ delay, noise }) => (delay > most ? null : noise * (1 + 1e-4 * delay));
}

interface FoundSetup {
  readonly setup: Setup;
  readonly value: number;
}

/** So many setups are looked at to see where it is worth to search. */
const looks = 3000;
/** So many of the best of them are searched from. */
const starts = 4;
/** Pauses after so many setups: far below a hundredth of a second. */
const betweenPauses = 40;

/**
 * Setups that are spread over the whole space: all combinations of a few values each, where these are not too many;
 * else as evenly as can be (a sequence of Halton's). Kept by who searches several goals.
 */
export function spread({ sizes, start }: Space): readonly Setup[] {
  const switches = sizes.filter((size) => size === 2).length;
  const numbers = sizes.length - switches;
  const each = numbers === 0 ? 2 : Math.floor((looks / 2 ** switches) ** (1 / numbers));
  const setups = each >= 4 ? everyCombination(sizes, each) : evenly(sizes);
  return [start, ...setups];
}

/** All combinations of so many values of each movable, from end to end. */
export function everyCombination(sizes: readonly number[], each: number): readonly Setup[] {
  let all: Setup[] = [[]];
  for (const size of sizes) {
    const count = Math.min(size, size === 2 ? 2 : each);
    const places = Array.from({ length: count }, (_, at) =>
      count === 1 ? 0 : Math.round((at * (size - 1)) / (count - 1)),
    );
    all = all.flatMap((setup) => places.map((place) => [...setup, place]));
  }
  return all;
}

const primes = [2, 3, 5, 7, 11, 13, 17, 19, 23, 29, 31, 37, 41, 43, 47, 53];

/** J. H. Halton, Numerische Mathematik 2 (1960): each movable counts backwards in a base of its own. */
function evenly(sizes: readonly number[]): readonly Setup[] {
  return Array.from({ length: looks }, (_, index) =>
    sizes.map((size, at) => Math.min(size - 1, Math.floor(size * backwards(index + 1, primes[at] ?? 59)))),
  );
}

function backwards(index: number, base: number): number {
  let [share, rest, value] = [1 / base, index, 0];
  while (rest > 0) {
    value += share * (rest % base);
    rest = Math.floor(rest / base);
    share /= base;
  }
  return value;
}

/** A setup with what it comes to. */
export interface Surveyed {
  readonly setup: Setup;
  readonly weighed: Worth;
}

/** Weighs setups, for several goals at once. */
export function* survey(space: Space, setups: readonly Setup[]): Generator<void, readonly Surveyed[]> {
  const all: Surveyed[] = [];
  for (const setup of setups) {
    all.push({ setup, weighed: space.weigh(setup) });
    if (all.length % betweenPauses === 0) yield;
  }
  return all;
}

/**
 * The best setup of a space by a goal; null where none holds. It begins at the best of those that were surveyed, and
 * moves one or two movables at a time, in steps that halve, as long as that is better. A generator: it pauses again
 * and again, so that others get their turn and can end it.
 */
export function* best(
  space: Space,
  goal: Goal,
  surveyed: readonly Surveyed[],
  most = starts,
): Generator<void, Surveyed | null> {
  let found: FoundSetup | null = null;
  const begin = yield* beginnings(space, goal, surveyed, most);
  for (const one of begin) {
    const end = yield* downhill(space, goal, one);
    if (found === null || end.value < found.value) found = end;
  }
  return found === null ? null : { setup: found.setup, weighed: space.weigh(found.setup) };
}

function* beginnings(
  space: Space,
  goal: Goal,
  surveyed: readonly Surveyed[],
  most: number,
): Generator<void, readonly FoundSetup[]> {
  const held = surveyed.flatMap(({ setup, weighed }): readonly FoundSetup[] => {
    const value = goalOf(weighed, goal);
    return value === null ? [] : [{ setup, value }];
  });
  held.sort((one, other) => one.value - other.value);
  const begin: FoundSetup[] = [];
  for (const one of held) {
    if (begin.length >= most) break;
    if (begin.some(({ setup }) => isNear(setup, one.setup, space.sizes))) continue;
    if (space.isSound(one.setup)) begin.push(one);
    yield;
  }
  return begin;
}

/** Until no step is better, however small. Each step is taken as soon as it is found. */
function* downhill(space: Space, goal: Goal, start: FoundSetup): Generator<void, FoundSetup> {
  const widest = Math.max(...space.sizes);
  let here = start;
  let count = 0;
  for (let step = 2 ** Math.floor(Math.log2(Math.max(1, widest / 8))); step >= 1; step /= 2) {
    for (let isBetter = true; isBetter; ) {
      isBetter = false;
      for (const move of moves(space.sizes, step)) {
        count += 1;
        if (count % betweenPauses === 0) yield;
        const setup = moved(here.setup, move, space.sizes);
        const value = setup === null ? null : goalOf(space.weigh(setup), goal);
        if (setup === null || value === null || value >= here.value || !space.isSound(setup)) continue;
        here = { setup, value };
        isBetter = true;
      }
    }
  }
  return here;
}

function goalOf(weighed: Worth, goal: Goal): number | null {
  return weighed.missed > 0 ? null : goal(weighed);
}

/** So many places up or down, for one or two movables. */
type Move = readonly (readonly [movable: number, by: number])[];

/** What a second movable does while the first goes a step: it makes up for it, by half, as much or twice; or helps. */
const shares = [-0.5, -1, -2, 0.5, 1];

function* moves(sizes: readonly number[], step: number): Generator<Move> {
  for (const at of sizes.keys())
    for (const way of [step, -step]) {
      yield [[at, way]];
      for (const other of sizes.keys())
        for (const share of shares) {
          const by = Math.round(way * share);
          if (other !== at && by !== 0)
            yield [
              [at, way],
              [other, by],
            ];
        }
    }
}

/** Null where a movable is at its end. */
function moved(setup: Setup, move: Move, sizes: readonly number[]): Setup | null {
  let to = setup;
  for (const [at, by] of move) {
    const size = sizes[at] ?? 1;
    const was = to[at] ?? 0;
    const next = size === 2 ? (by > 0 ? 1 : 0) : Math.max(0, Math.min(size - 1, was + by));
    if (next === was) return null;
    to = to.with(at, next);
  }
  return to;
}

/** Two beginnings that differ little lead to the same end. */
function isNear(one: Setup, other: Setup, sizes: readonly number[]): boolean {
  return one.every((at, index) => {
    const size = sizes[index] ?? 1;
    return size === 2 ? at === other[index] : Math.abs(at - (other[index] ?? 0)) <= size / 6;
  });
}
