import type { Catalog } from '../../../catalog/catalog';
import { wordOfPart } from '../../meaning/part-parameter';
import type { SensedWord } from '../words/lexicon';
import { allDrafts, type Draft } from './drafts';

/** A way to say a target, in what its words speak of. */
export interface Phrase {
  /** Among all phrases. */
  readonly index: number;
  readonly target: number;
  readonly slots: readonly PhraseWord[];
  /** What all slots weigh together. */
  readonly weight: number;
}

export interface PhraseWord {
  readonly senses: ReadonlyMap<string, number>;
  readonly weight: number;
}

/** Something that a setting may stand for, with all ways to say it. */
export interface KnownTarget extends Omit<Draft, 'phrases'> {
  readonly phrases: readonly Phrase[];
}

export interface Targets {
  readonly all: readonly KnownTarget[];
  /** Those of all targets, one target after the other. */
  readonly phrases: readonly Phrase[];
  /** By phrase, the kind of its parameter. */
  readonly kindOf: readonly string[];
  /** The phrases in which a concept stands, with the slot. */
  readonly byConcept: ReadonlyMap<string, readonly Posting[]>;
  /** The fewer parameters speak of a concept, the more it tells: 0 to 1. */
  readonly weightOf: (concept: string) => number;
}

export interface Posting {
  readonly phrase: number;
  /** How much of the phrase it says. */
  readonly gain: number;
}

const made = new WeakMap<Catalog, Targets>();

/** All that a setting of a board may stand for, made once for a catalogue. */
export function targetsOf(catalog: Catalog): Targets {
  const known = made.get(catalog);
  if (known !== undefined) return known;
  const targets = weighed(allDrafts(catalog));
  made.set(catalog, targets);
  return targets;
}

function weighed(drafts: readonly Draft[]): Targets {
  const counts = countsOf(drafts);
  const weightOf = (concept: string) => {
    const found = counts.get(concept);
    if (found === undefined) return unknownWeight;
    return Math.max(leastWeight, Math.log(1 + 250 / found) / Math.log(251));
  };
  const phrases: Phrase[] = [];
  const all = drafts.map((draft, target): KnownTarget => {
    const own = draft.phrases.map((words, at) => phraseOf(words, phrases.length + at, target, weightOf));
    phrases.push(...own);
    return { ...draft, phrases: own };
  });
  const kindOf = phrases.map(({ target }) => drafts[target]?.known.parameter.kind ?? '');
  return { all, phrases, kindOf, byConcept: postings(phrases), weightOf };
}

const unknownWeight = 0.8;
const leastWeight = 0.25;

/** How many parameters, and members, speak of each concept. */
function countsOf(drafts: readonly Draft[]): ReadonlyMap<string, number> {
  const seen = new Map<string, Set<string>>();
  for (const { known, phrases, part } of drafts) {
    // Words that a list may have say no more of it than those that a word may be.
    if (wordOfPart(part) !== null) continue;
    for (const { senses } of phrases.flat()) {
      const concept = senses[0]?.concept ?? '';
      const all = seen.get(concept) ?? new Set();
      all.add(known.name);
      seen.set(concept, all);
    }
  }
  return new Map([...seen].map(([concept, { size }]) => [concept, size]));
}

function phraseOf(
  words: readonly SensedWord[],
  index: number,
  target: number,
  weightOf: (concept: string) => number,
): Phrase {
  const slots = words.map(({ senses }) => ({
    senses: new Map(senses.map(({ concept, trust }) => [concept, trust])),
    weight: weightOf(senses[0]?.concept ?? ''),
  }));
  return { index, target, slots, weight: slots.reduce((sum, { weight }) => sum + weight, 0) };
}

function postings(phrases: readonly Phrase[]): ReadonlyMap<string, readonly Posting[]> {
  const byConcept = new Map<string, Posting[]>();
  for (const { index, slots, weight } of phrases)
    for (const slot of slots)
      for (const [concept, trust] of slot.senses) {
        const all = byConcept.get(concept) ?? [];
        all.push({ phrase: index, gain: trust * slot.weight * (1 / weight + longPhrases) });
        byConcept.set(concept, all);
      }
  return byConcept;
}

/** A long phrase that is said in part tells more than a short one said in the same part. */
const longPhrases = 0.3;
