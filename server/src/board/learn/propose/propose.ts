import type { Catalog } from '../../../catalog/catalog';
import type { LearnedSetting } from '../learned-settings';
import { lexiconOf } from '../words/lexicon';
import { Asking, gainsOf } from './asked';
import { assigned } from './assign';
import { candidatesOf } from './candidates';
import { withContext } from './context';
import { Matcher } from './matching';
import type { Proposal } from './proposal';
import { setInUse } from './sets-in-use';
import { targetsOf } from './targets';

/**
 * What each setting of a listing may stand for, in their order; null where nothing is near. The whole listing is
 * assigned at once: one parameter, or one part of it, goes to one setting. Of several sets of the same settings, of
 * which the listing says which is in use, only that one stands for anything.
 */
export function proposals(
  settings: readonly LearnedSetting[],
  catalog: Catalog,
): readonly (Proposal | null)[] {
  const targets = targetsOf(catalog);
  const asking = new Asking(lexiconOf(catalog), targets, gainsOf(settings));
  const matcher = new Matcher(targets);
  const sets = setInUse(settings);
  const alone = settings.map((setting) => {
    const asked = asking.asked(setting);
    const candidates = sets?.isSpare(setting) === true ? [] : candidatesOf(asked, targets, matcher, catalog);
    return { asked, candidates };
  });
  return assigned(withContext(alone), catalog).map((proposal, index) => {
    const setting = settings[index];
    const why = setting === undefined ? null : (sets?.why(setting) ?? null);
    return proposal === null || why === null ? proposal : { ...proposal, why: `${proposal.why} ${why}.` };
  });
}
