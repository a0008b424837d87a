import type { ProposalId, TradePoint } from './answer';
import { during, type FindProgress } from './progress';
import { best, type Goal, leastDelay, quietestWithin, type Setup, type Surveyed } from './search';
import type { Work } from './work';

/** The setups that are proposed, and what there is between the ends of the trade-off. */
export interface ThreeSetups {
  readonly three: readonly { readonly id: ProposalId; readonly setup: Setup }[];
  readonly front: readonly TradePoint[];
}

/** Between the two ends so many places are looked at; the one in the middle is proposed. */
const between = 5;

/** The best setups along the trade-off, from the least delay to the quietest; null where nothing holds. */
export function* threeSetups(
  work: Work,
  surveyed: readonly Surveyed[],
): Generator<FindProgress, ThreeSetups | null> {
  const seek = (goal: Goal, share: number, known: readonly Surveyed[], most?: number) =>
    during(held(work, goal, known, most), share, 'the best of them');
  const least = yield* seek(leastDelay, 0.35, surveyed);
  if (least === null) return null;
  const quietest =
    (yield* seek(quietestWithin(Number.POSITIVE_INFINITY), 0.5, [...surveyed, least])) ?? least;
  const ends = [least.weighed.delay, quietest.weighed.delay] as const;
  const along: Surveyed[] = [least];
  for (let at = 1; at <= between; at += 1) {
    const most = betweenEnds(ends, at / (between + 1));
    const near = [...along.slice(-1), quietest, ...surveyed];
    const one = yield* seek(quietestWithin(most), 0.5 + (0.4 * at) / between, near);
    if (one !== null) along.push(one);
  }
  along.push(quietest);
  const middle = along[Math.floor(along.length / 2)] ?? least;
  const three = [
    { id: 'least-delay', setup: least.setup },
    { id: 'middle', setup: middle.setup },
    { id: 'quietest', setup: quietest.setup },
  ] as const;
  return {
    three: three.filter(({ setup }, at) =>
      three.slice(0, at).every((one) => one.setup.join(' ') !== setup.join(' ')),
    ),
    front: falling(along.map(({ weighed: { delay, noise } }) => ({ delay, noise }))),
  };
}

/** By equal factors, where nothing delays by equal steps. */
function betweenEnds([from, to]: readonly [number, number], share: number): number {
  return from > 0.01 ? from * (to / from) ** share : from + share * (to - from);
}

/** Only what is quieter than all that delays less. */
function falling(points: readonly TradePoint[]): readonly TradePoint[] {
  const rising = [...points].sort((one, other) => one.delay - other.delay);
  return rising.filter(({ noise }, at) => rising.slice(0, at).every((one) => one.noise > noise));
}

/** The best by a goal that also passes all checks. */
function* held(
  work: Work,
  goal: Goal,
  surveyed: readonly Surveyed[],
  most?: number,
): Generator<void, Surveyed | null> {
  const found = yield* best(work.space, goal, surveyed, most);
  if (found === null || work.isAllowed(found.setup)) return found;
  work.isStrict = true;
  return yield* best(work.space, goal, surveyed, most);
}
