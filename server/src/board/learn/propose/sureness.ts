import type { Weighed } from './candidates';
import type { Sureness } from './proposal';

export interface Contest {
  readonly first: Weighed;
  /** The next that the setting may be. */
  readonly second: Weighed | null;
  /** How well the target suits the setting, besides this one, that it suits best. */
  readonly claim: number;
}

const likely = { score: 0.6, lead: 0.03 };

/** So much at least, each from 0 to 1, makes a proposal sure. */
interface Bar {
  readonly score: number;
  /** Before the next that the setting may be, and before the next setting that may be it. */
  readonly lead: number;
  readonly before: number;
  readonly explained: number;
  readonly covered: number;
}

/** Words that are written out may have a neighbour; what was shortened has to stand further from the others. */
const bars: readonly Bar[] = [
  { score: 0.84, lead: 0.08, before: 0.06, explained: 0.85, covered: 0.8 },
  { score: 0.74, lead: 0.15, before: 0.12, explained: 0.72, covered: 0.72 },
];
/** How much has to be told: a single common word is too little, and more is asked among groups of other things. */
const leastEvidence = { atHome: 0.65, elsewhere: 1.2, words: 2 };

/**
 * Sure is only what leaves no room: the name says no more than the parameter accounts for, and all that the parameter
 * asks for; the value fits; nothing else comes near, and no other setting claims it as well.
 */
export function surenessOf({ first, second, claim }: Contest): Sureness {
  const { score, match, fit, hasSpareNumber } = first;
  const lead = score - (second?.score ?? 0);
  const isTold =
    match.words >= leastEvidence.words &&
    match.evidence >= (match.isAtHome ? leastEvidence.atHome : leastEvidence.elsewhere);
  const isClear = bars.some(
    (bar) =>
      score >= bar.score &&
      lead >= bar.lead &&
      score - claim >= bar.before &&
      match.explained >= bar.explained &&
      match.covered >= bar.covered,
  );
  if (isTold && isClear && fit.mayBeSure && !hasSpareNumber) return 'sure';
  return match.words >= leastEvidence.words && score >= likely.score && lead >= likely.lead
    ? 'likely'
    : 'possible';
}
