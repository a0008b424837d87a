import type { Weighed } from './candidates';
import type { Sureness } from './proposal';

export interface Contest {
  readonly first: Weighed;
  /** The next that the setting may be. */
  readonly second: Weighed | null;
  /** How well the target suits the setting, besides this one, that it suits best. */
  readonly claim: number;
}

const sure = { score: 0.84, lead: 0.08, explained: 0.85, covered: 0.8, before: 0.06, told: 0.65, alone: 1.2 };
const likely = { score: 0.6, lead: 0.03 };

/**
 * Sure is only what leaves no room: the name says no more than the parameter accounts for, and all that the parameter
 * asks for; the value fits; nothing else comes near, and no other setting claims it as well.
 */
export function surenessOf({ first, second, claim }: Contest): Sureness {
  const { score, match, fit, hasSpareNumber } = first;
  const lead = score - (second?.score ?? 0);
  const isSure =
    score >= sure.score &&
    lead >= sure.lead &&
    match.explained >= sure.explained &&
    match.covered >= sure.covered &&
    score - claim >= sure.before &&
    match.shared.length >= 2 &&
    match.told >= (match.isAtHome ? sure.told : sure.alone) &&
    fit.mayBeSure &&
    !hasSpareNumber;
  if (isSure) return 'sure';
  return score >= likely.score && lead >= likely.lead ? 'likely' : 'possible';
}
