import type { Catalog } from '../../../catalog/catalog';
import type { Weighed } from './candidates';
import type { OpenSetting } from './context';
import type { Proposal } from './proposal';
import { surenessOf } from './sureness';
import { whyOf } from './why';

const mostRivals = 2;

/** Gives each target to the setting that it suits best, the clearest first, and says how sure that is. */
export function assigned(all: readonly OpenSetting[], catalog: Catalog): readonly (Proposal | null)[] {
  const held = new Map<string, number>();
  const chosen: (Weighed | null)[] = all.map(() => null);
  const edges = all.flatMap(({ candidates }, setting) =>
    candidates.map((candidate, place) => ({ setting, candidate, lead: leadOf(candidates, place) })),
  );
  edges.sort(
    (one, other) =>
      other.candidate.score + other.lead - one.candidate.score - one.lead || one.setting - other.setting,
  );
  for (const { setting, candidate } of edges) {
    if (chosen[setting] !== null || held.has(candidate.key)) continue;
    held.set(candidate.key, setting);
    chosen[setting] = candidate;
  }
  const claims = claimsOf(all);
  const made = all.map((open, index) => {
    const first = chosen[index] ?? null;
    return first === null ? null : proposalOf(open, first, claims.get(first.key) ?? [], catalog);
  });
  const owners = ownersOf(all, made);
  return made.map((proposal, index) => {
    const owner = proposal?.sureness === 'sure' ? owners.get(thingOf(proposal)) : undefined;
    const subject = wordsBeforeNumber(all[index]);
    const isOfAnother = owner !== undefined && subject !== null && subject !== owner;
    return proposal !== null && isOfAnother ? { ...proposal, sureness: 'likely' } : proposal;
  });
}

/** `gyro.lp` of `gyro.lp1.hz`; null without a number. */
function wordsBeforeNumber(open: OpenSetting | undefined): string | null {
  const { groups = [], name = '' } = open?.asked.setting ?? {};
  const [, words = null] = /^(.*?\p{L})[^\p{L}\p{N}]?\d/u.exec([...groups, name].join('/')) ?? [];
  return words;
}

/** Of which member of a collection a proposal is: `gyro.filter.<number> 1`. */
function thingOf({ parameter, member }: Proposal): string {
  return `${parameter.slice(0, parameter.lastIndexOf('.'))} ${member ?? ''}`;
}

/**
 * One filter is one thing on a board: where `lp 1` and `notch 1` are both proposed for the first, that of which more
 * settings are proposed has it, else that which is listed first. By member, its words before the number.
 */
function ownersOf(
  all: readonly OpenSetting[],
  made: readonly (Proposal | null)[],
): ReadonlyMap<string, string> {
  const counts = new Map<string, Map<string, number>>();
  for (const [index, proposal] of made.entries()) {
    const subject = wordsBeforeNumber(all[index]);
    if (proposal === null || proposal.member === null || subject === null) continue;
    const bySubject = counts.get(thingOf(proposal)) ?? new Map<string, number>();
    counts.set(thingOf(proposal), bySubject.set(subject, (bySubject.get(subject) ?? 0) + 1));
  }
  const most = (bySubject: ReadonlyMap<string, number>) =>
    [...bySubject].sort(([, one], [, other]) => other - one)[0]?.[0] ?? '';
  return new Map([...counts].map(([thing, bySubject]) => [thing, most(bySubject)]));
}

/** How far a candidate is ahead of what else the setting may be: who has no other choice goes first. */
function leadOf(candidates: readonly Weighed[], place: number): number {
  const own = candidates[place]?.score ?? 0;
  const other = candidates[place === 0 ? 1 : 0]?.score ?? 0;
  return 0.3 * (own - other);
}

/** By target, how well each setting would suit it, the best first. */
function claimsOf(all: readonly OpenSetting[]): ReadonlyMap<string, readonly number[]> {
  const claims = new Map<string, number[]>();
  for (const { candidates } of all)
    for (const { key, score } of candidates) {
      const scores = claims.get(key) ?? [];
      scores.push(score);
      claims.set(key, scores);
    }
  for (const scores of claims.values()) scores.sort((one, other) => other - one);
  return claims;
}

/** The best claim but the setting's own. */
function otherClaim([best = 0, second = 0]: readonly number[], own: number): number {
  return best > own ? best : second;
}

function proposalOf(
  open: OpenSetting,
  first: Weighed,
  claims: readonly number[],
  catalog: Catalog,
): Proposal {
  const others = open.candidates.filter(({ key }) => key !== first.key);
  const described = (one: Weighed) => {
    const { parameter, member, part } = one;
    return { parameter, member, part, why: whyOf(one, catalog) };
  };
  return {
    ...described(first),
    sureness: surenessOf({ first, second: others[0] ?? null, claim: otherClaim(claims, first.score) }),
    rivals: others.slice(0, mostRivals).map(described),
  };
}
