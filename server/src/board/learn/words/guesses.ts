import { shortenedTrust } from './shortened';

/** What a word may speak of. */
export interface Sense {
  /** A concept of the trade words, or `=word` for a word that is none of theirs. */
  readonly concept: string;
  /** 0 to 1. */
  readonly trust: number;
}

const shortestWord = 4;
const initialsTrust = 0.5;
const most = 6;
/** The more a short word may be, the less each of them is trusted. */
const doubtOfEach = 0.06;

/** What shortened and misspelt words may be. */
export class Guesses {
  /** Words by their first letter. */
  private readonly byLetter = new Map<string, { readonly word: string; readonly sense: Sense }[]>();
  /** Concepts by the first letters of the words that say them: `ff`. */
  private readonly byInitials = new Map<string, string[]>();

  add(words: readonly string[], sense: Sense): void {
    const [first = '', ...others] = words;
    if (others.length > 0) {
      const initials = words.map((one) => one.charAt(0)).join('');
      this.byInitials.set(initials, [...(this.byInitials.get(initials) ?? []), sense.concept]);
    } else if (first.length >= shortestWord) {
      const all = this.byLetter.get(first.charAt(0)) ?? [];
      all.push({ word: first, sense });
      this.byLetter.set(first.charAt(0), all);
    }
  }

  /** What a word may be short for, the likeliest first. */
  of(word: string): readonly Sense[] {
    const best = new Map<string, number>();
    const note = (concept: string, trust: number) => {
      if (trust > (best.get(concept) ?? 0)) best.set(concept, trust);
    };
    for (const concept of this.byInitials.get(word) ?? []) note(concept, initialsTrust);
    for (const { word: whole, sense } of this.byLetter.get(word.charAt(0)) ?? [])
      note(sense.concept, sense.trust * shortenedTrust(word, whole));
    const all = [...best].sort(([, one], [, other]) => other - one).slice(0, most);
    const doubt = 1 - doubtOfEach * Math.max(0, all.length - 1);
    return all.map(([concept, trust]) => ({ concept, trust: trust * doubt }));
  }
}
