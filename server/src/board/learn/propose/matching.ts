import type { Asked, AskedWord } from './asked';
import type { KnownTarget, Phrase, PhraseWord, Targets } from './targets';

/** How well a setting's words say a target. */
export interface WordMatch {
  readonly target: number;
  /** 0 to 1. */
  readonly score: number;
  /** The share of what the name tells that the target accounts for: 0 to 1. */
  readonly explained: number;
  /** The share of what the target asks for that name, groups and remark say. */
  readonly covered: number;
  /** How much is told by what they share: one common word tells little. */
  readonly told: number;
  /** Whether its groups speak of the target; true where there are none. */
  readonly isAtHome: boolean;
  /** Concepts that name and target share. */
  readonly shared: readonly string[];
}

/** So many targets are looked at closely, of those that share the most words. */
const closely = 24;
/** What groups and a remark say counts less than what the name says. */
const aroundShare = 0.9;
const remarkShare = 0.75;
/** What is said of a target, but in none of its phrases. */
const asideShare = 0.6;
/** So much of a phrase the name, or the remark, has to say itself: a group alone is no evidence. */
const leastOwn = 0.2;
/** Groups with other words make a target a little less likely: boards group in ways of their own. */
const elsewhere = 0.96;

/** The targets that a setting's words may say, the best first. */
export function matches(asked: Asked, targets: Targets): readonly WordMatch[] {
  const found: WordMatch[] = [];
  for (const target of nearest(asked, targets)) {
    const known = targets.all[target];
    const best = known === undefined ? null : bestPhrase(asked, known, target);
    if (best !== null) found.push(best);
  }
  return found.sort((one, other) => other.score - one.score || one.target - other.target);
}

/** The targets whose phrases share most with the words, roughly weighed. */
function nearest(asked: Asked, { byConcept }: Targets): readonly number[] {
  const sums = new Map<Phrase, number>();
  const addUp = (words: readonly AskedWord[], share: number, onlyKnown: boolean) => {
    for (const word of words) {
      const seen = new Map<Phrase, number>();
      for (const { concept, trust } of word.senses)
        for (const posting of byConcept.get(concept) ?? []) {
          const weight = posting.phrase.slots[posting.slot]?.weight ?? 0;
          const gain = share * trust * posting.trust * weight * (1 / posting.phrase.weight + 0.3);
          if (gain > (seen.get(posting.phrase) ?? 0)) seen.set(posting.phrase, gain);
        }
      for (const [phrase, gain] of seen) {
        const before = sums.get(phrase);
        if (before !== undefined || !onlyKnown) sums.set(phrase, (before ?? 0) + gain);
      }
    }
  };
  addUp(asked.own, 1, false);
  addUp(asked.remark, remarkShare, false);
  addUp(asked.around, aroundShare, true);
  const best = new Map<number, number>();
  for (const [{ target }, sum] of sums) if (sum > (best.get(target) ?? 0)) best.set(target, sum);
  const all = [...best].sort(([a, one], [b, other]) => other - one || a - b);
  return all.slice(0, closely).map(([target]) => target);
}

function bestPhrase(asked: Asked, known: KnownTarget, target: number): WordMatch | null {
  let best: WordMatch | null = null;
  for (const phrase of known.phrases) {
    const match = phraseMatch(asked, phrase, known, target);
    if (match !== null && match.score > (best?.score ?? 0)) best = match;
  }
  return best;
}

function phraseMatch(asked: Asked, phrase: Phrase, known: KnownTarget, target: number): WordMatch | null {
  let covered = 0;
  let own = 0;
  const shared: string[] = [];
  for (const slot of phrase.slots) {
    const byName = strongest(asked.own, slot);
    const byRemark = remarkShare * strongest(asked.remark, slot);
    const said = Math.max(byName, byRemark, aroundShare * strongest(asked.around, slot));
    covered += slot.weight * said;
    own += slot.weight * Math.max(byName, byRemark);
    const [concept] = slot.senses.keys();
    if (said > 0.3 && concept !== undefined) shared.push(concept);
  }
  if (own < leastOwn * phrase.weight || phrase.weight === 0) return null;
  const share = covered / phrase.weight;
  const explained = explainedBy(asked, phrase, known);
  const isAtHome = asked.around.length === 0 || asked.around.some((word) => speaksOf(word, known));
  const score = Math.sqrt(share * explained) * (isAtHome ? 1 : elsewhere);
  return { target, score, isAtHome, explained, covered: share, told: covered, shared };
}

function speaksOf({ senses }: AskedWord, { about }: KnownTarget): boolean {
  return senses.some(({ concept, trust }) => trust >= 0.6 && (about.get(concept) ?? 0) >= 0.3);
}

function strongest(words: readonly AskedWord[], { senses }: PhraseWord): number {
  let best = 0;
  for (const word of words)
    for (const { concept, trust } of word.senses) {
      const both = trust * (senses.get(concept) ?? 0);
      if (both > best) best = both;
    }
  return best;
}

/** How much of what the name tells is accounted for; a remark tells more than a name needs. */
function explainedBy(asked: Asked, phrase: Phrase, { about }: KnownTarget): number {
  let all = 0;
  let told = 0;
  for (const word of asked.own) {
    let best = 0;
    for (const slot of phrase.slots) best = Math.max(best, strongest([word], slot));
    for (const { concept, trust } of word.senses)
      best = Math.max(best, asideShare * trust * (about.get(concept) ?? 0));
    all += word.weight;
    told += word.weight * best;
  }
  if (all === 0) return asked.remark.length > 0 ? 0.8 : 0;
  const byName = told / all;
  if (asked.remark.length === 0) return byName;
  const byRemark = phrase.slots.reduce((sum, slot) => sum + slot.weight * strongest(asked.remark, slot), 0);
  return Math.max(byName, (0.85 * byRemark) / phrase.weight);
}
