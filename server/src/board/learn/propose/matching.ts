import type { LearnedLook } from '../learned-settings';
import type { AskedSetting, AskedWord } from './asked';
import { kindsFor } from './fit';
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
  readonly evidence: number;
  /** Whether its groups speak of the target; true where there are none. */
  readonly isAtHome: boolean;
  /** So many words of the name and its groups say it. */
  readonly words: number;
  /** Concepts that name and target share. */
  readonly shared: readonly string[];
}

/** So many targets are looked at closely, of those that share the most words. */
const closely = 24;
/** And so many ways to say each. */
const phrasesEach = 4;
/** So much of what the best shares the others have to share. */
const near = 0.35;
/** What groups and a remark say counts less than what the name says. */
const aroundShare = 0.9;
const remarkShare = 0.75;
/** What is said of a target, but in none of its phrases. */
const asideShare = 0.6;
/** Groups tell less where the phrase itself has no word for them. */
const besideShare = 0.5;
/** So much of a phrase the name, or the remark, has to say itself: a group alone is no evidence. */
const leastOwn = 0.2;
/** Groups with other words make a target a little less likely: boards group in ways of their own. */
const elsewhere = 0.96;
/** So does a name of a member where nothing says of what: a voltage is rarely the one in the picture. */
const outOfCollection = 0.92;
/** One word in a group of other things. */
const singleWord = 0.9;

/** What the words of settings may say, by one catalogue. */
export class Matcher {
  /** By phrase, for one setting at a time; all 0 between two. */
  private readonly sums: Float64Array;
  private readonly best: Float64Array;
  /** A listing says the same words again and again: of many profiles, many switches, many elements. */
  private readonly known = new Map<string, readonly WordMatch[]>();

  constructor(private readonly targets: Targets) {
    this.sums = new Float64Array(targets.phrases.length);
    this.best = new Float64Array(targets.phrases.length);
  }

  /** The targets that a setting's words may say, the best first. */
  matches(asked: AskedSetting): readonly WordMatch[] {
    const key = keyOf(asked);
    const before = this.known.get(key);
    if (before !== undefined) return before;
    const made = this.matchesOf(asked);
    this.known.set(key, made);
    return made;
  }

  private matchesOf(asked: AskedSetting): readonly WordMatch[] {
    const found = new Map<number, WordMatch>();
    for (const phrase of this.nearest(asked)) {
      const known = this.targets.all[phrase.target];
      const match = known === undefined ? null : phraseMatch(asked, phrase, known);
      if (match !== null && isBetter(match, found.get(match.target))) found.set(match.target, match);
    }
    return [...found.values()].sort((one, other) => other.score - one.score || one.target - other.target);
  }

  /** The phrases that share most with the words, roughly weighed: a few of each of the nearest targets. */
  private nearest(asked: AskedSetting): readonly Phrase[] {
    const touched: number[] = [];
    for (const word of asked.own) this.addUp(word, 1, touched);
    for (const word of asked.remark) this.addUp(word, remarkShare, touched);
    for (const word of asked.around) this.addUp(word, aroundShare, null);
    const chosen = this.chosen(this.sorted(touched, asked.setting.look));
    for (const phrase of touched) this.sums[phrase] = 0;
    return chosen;
  }

  /** Those that a value of this look can be of, and that come near the best, the best first. */
  private sorted(touched: readonly number[], look: LearnedLook): readonly number[] {
    const { sums, targets } = this;
    const kinds = kindsFor[look];
    const fitting = touched.filter((index) => kinds.includes(targets.kindOf[index] ?? ''));
    const best = fitting.reduce((most, index) => Math.max(most, sums[index] ?? 0), 0);
    return fitting
      .filter((index) => (sums[index] ?? 0) >= near * best)
      .sort((a, b) => (sums[b] ?? 0) - (sums[a] ?? 0) || a - b);
  }

  private chosen(sorted: readonly number[]): readonly Phrase[] {
    const counts = new Map<number, number>();
    const chosen: Phrase[] = [];
    for (const index of sorted) {
      const phrase = this.targets.phrases[index];
      if (phrase === undefined) continue;
      const count = counts.get(phrase.target) ?? 0;
      if (count === 0 && counts.size === closely) break;
      counts.set(phrase.target, count + 1);
      if (count < phrasesEach) chosen.push(phrase);
    }
    return chosen;
  }

  /** Adds what a word says of each phrase. `touched`: takes those that were not yet spoken of; null: leaves them. */
  private addUp({ senses }: AskedWord, share: number, touched: number[] | null): void {
    const { sums, best } = this;
    const seen: number[] = [];
    for (const { concept, trust } of senses)
      for (const { phrase, gain } of this.targets.byConcept.get(concept) ?? []) {
        const before = best[phrase] ?? 0;
        const told = share * trust * gain;
        if (told <= before || (touched === null && sums[phrase] === 0)) continue;
        if (before === 0) seen.push(phrase);
        best[phrase] = told;
      }
    for (const phrase of seen) {
      if (sums[phrase] === 0) touched?.push(phrase);
      sums[phrase] = (sums[phrase] ?? 0) + (best[phrase] ?? 0);
      best[phrase] = 0;
    }
  }
}

/** The same text for settings whose words say the same. */
function keyOf({ own, around, remark, setting: { look } }: AskedSetting): string {
  const told = [own, around, remark].map((words) =>
    words.map(({ text, senses }) => `${text}=${senses[0]?.concept ?? ''}`).join(' '),
  );
  return [look, ...told].join('\n');
}

/** How much of one word a phrase has. */
function saidOfWord(word: AskedWord, { slots }: Phrase): number {
  let best = 0;
  for (const slot of slots) best = Math.max(best, strongest([word], slot));
  return best;
}

/** How many words say it, and how much more the groups tell that stand in no word of the phrase. */
function wordsOf(
  { own, around, remark }: AskedSetting,
  saidOfOwn: readonly number[],
  phrase: Phrase,
  known: KnownTarget,
) {
  const isSaying = (word: AskedWord) => saidOfWord(word, phrase) > 0.4;
  const isAround = around.map(isSaying);
  const beside = around.filter((word, at) => !isAround[at] && speaksOf(word, known));
  const saying = [
    ...own.filter((_, at) => (saidOfOwn[at] ?? 0) > 0.4),
    ...around.filter((_, at) => isAround[at]),
    ...remark.filter(isSaying),
  ];
  return {
    words: [...saying, ...beside].reduce((sum, { text }) => sum + text.split(' ').length, 0),
    beside: besideShare * beside.reduce((sum, { weight }) => sum + weight, 0),
  };
}

/** Of two ways that say as much, the one that has more of the words. */
function isBetter(one: WordMatch, other: WordMatch | undefined): boolean {
  if (other === undefined) return true;
  return Math.abs(one.score - other.score) < 1e-9 ? one.evidence > other.evidence : one.score > other.score;
}

function phraseMatch(asked: AskedSetting, phrase: Phrase, known: KnownTarget): WordMatch | null {
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
  const saidOfOwn = asked.own.map((word) => saidOfWord(word, phrase));
  const { words, beside } = wordsOf(asked, saidOfOwn, phrase, known);
  const explained = explainedBy(asked, saidOfOwn, phrase, known);
  const isAtHome = asked.around.length === 0 || asked.around.some((word) => speaksOf(word, known));
  const place = (isAtHome ? 1 : elsewhere) * (isOfCollection(asked, known) ? 1 : outOfCollection);
  const isLoose = !isAtHome || asked.around.length === 0;
  const alone = phrase.slots.length === 1 && isLoose ? singleWord : 1;
  const score = Math.sqrt(share * explained) * place * alone;
  return {
    target: phrase.target,
    score,
    isAtHome,
    explained,
    covered: share,
    evidence: covered + beside,
    words,
    shared,
  };
}

function speaksOf({ senses }: AskedWord, { about }: KnownTarget): boolean {
  return senses.some(({ concept, trust }) => trust >= 0.6 && (about.get(concept) ?? 0) >= 0.3);
}

function isOfCollection({ own, around }: AskedSetting, { collection }: KnownTarget): boolean {
  if (collection === null) return true;
  const says = ({ senses }: AskedWord) =>
    senses.some(({ concept, trust }) => trust >= 0.6 && collection.has(concept));
  return own.some(says) || around.some(says);
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
function explainedBy(
  asked: AskedSetting,
  saidOfOwn: readonly number[],
  phrase: Phrase,
  { about }: KnownTarget,
): number {
  let all = 0;
  let told = 0;
  for (const [at, word] of asked.own.entries()) {
    let best = saidOfOwn[at] ?? 0;
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
