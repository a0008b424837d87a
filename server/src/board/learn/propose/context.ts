import type { AskedSetting } from './asked';
import type { Weighed } from './candidates';

/** A setting with what it may stand for, the likeliest first. */
export interface OpenSetting {
  readonly asked: AskedSetting;
  readonly candidates: readonly Weighed[];
}

/**
 * What neighbours tell: settings of one family stand for one family of parameters, and settings of one group for
 * parameters of few groups.
 */
export function withContext(all: readonly OpenSetting[]): readonly OpenSetting[] {
  return byGroup(bySubject(byFamily(all)));
}

const familyBonus = 0.1;
const subjectBonus = 0.08;
const groupBonus = 0.06;

function byFamily(all: readonly OpenSetting[]): readonly OpenSetting[] {
  return raised(all, familyKey, ({ family }) => family, familyBonus);
}

/** Settings of one numbered thing stand for parameters of one: `notch 2 width`, `notch 2 centre`. */
function bySubject(all: readonly OpenSetting[]): readonly OpenSetting[] {
  const thingOf = ({ parameter }: Weighed) => parameter.slice(0, parameter.lastIndexOf('.'));
  return raised(all, subjectKey, thingOf, subjectBonus);
}

function byGroup(all: readonly OpenSetting[]): readonly OpenSetting[] {
  return raised(all, groupKey, ({ known }) => known.known.group, groupBonus);
}

/** By key, how much of its settings' evidence speaks for each value; only where several settings speak. */
type EvidenceShares = ReadonlyMap<string, ReadonlyMap<string, number>>;

function raised(
  all: readonly OpenSetting[],
  keyOf: (asked: AskedSetting) => string | null,
  traitOf: (candidate: Weighed) => string,
  bonus: number,
): readonly OpenSetting[] {
  const shares = sharesOf(gathered(all, keyOf), traitOf);
  return all.map((open) => {
    const key = keyOf(open.asked);
    const share = key === null ? undefined : shares.get(key);
    if (share === undefined || open.candidates.length === 0) return open;
    const candidates = open.candidates.map((one) => ({
      ...one,
      score: one.score + bonus * (share.get(traitOf(one)) ?? 0),
    }));
    return { ...open, candidates: candidates.sort((one, other) => other.score - one.score) };
  });
}

function sharesOf(
  families: ReadonlyMap<string, readonly OpenSetting[]>,
  traitOf: (candidate: Weighed) => string,
): EvidenceShares {
  return new Map(
    [...families].flatMap(([key, members]) => {
      if (members.length < 2) return [];
      const sums = new Map<string, number>();
      for (const { candidates } of members) {
        const best = new Map<string, number>();
        for (const one of candidates)
          best.set(traitOf(one), Math.max(best.get(traitOf(one)) ?? 0, one.score));
        const top = candidates[0]?.score ?? 1;
        for (const [value, score] of best) sums.set(value, (sums.get(value) ?? 0) + (score / top) ** 4);
      }
      return [[key, new Map([...sums].map(([value, sum]) => [value, sum / members.length]))] as const];
    }),
  );
}

function gathered(
  all: readonly OpenSetting[],
  keyOf: (asked: AskedSetting) => string | null,
): ReadonlyMap<string, readonly OpenSetting[]> {
  const found = new Map<string, OpenSetting[]>();
  for (const open of all) {
    const key = keyOf(open.asked);
    if (key === null) continue;
    const members = found.get(key) ?? [];
    members.push(open);
    found.set(key, members);
  }
  return found;
}

const axes = new Set(['roll', 'pitch', 'yaw']);

/** A name without its axis and its numbers; null for one that has neither. */
function familyKey({ own, around, ownNumbers, setting }: AskedSetting): string | null {
  const word = (texts: typeof own) =>
    texts.map(({ text, senses }) => (axes.has(senses[0]?.concept ?? '') ? '*' : text));
  const names = [...word(own), '/', ...word(around)];
  return ownNumbers > 0 || names.includes('*') ? JSON.stringify([names, setting.look]) : null;
}

function subjectKey({ subject, setting }: AskedSetting): string | null {
  return subject === null ? null : JSON.stringify([...setting.groups, subject]);
}

function groupKey({ setting: { groups } }: AskedSetting): string | null {
  return groups.length === 0 ? null : JSON.stringify(groups);
}
