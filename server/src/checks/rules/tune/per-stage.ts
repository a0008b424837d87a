import type { CraftView } from '../../../craft/view';
import { type Stage, stagesOfKind } from '../../../figures/filter-stages';
import type { CodeRule, RuleFinding } from '../../rule';

/** A rule about each filter of some kinds by itself. `find`: what there is to say of one; null: nothing. */
export function perStage(
  id: string,
  kinds: readonly string[],
  find: (view: CraftView, stage: Stage) => Omit<RuleFinding, 'id'> | null,
): CodeRule {
  return {
    ids: [id],
    scope: 'pack',
    check(view, report) {
      for (const stage of stagesOfKind(view, ...kinds)) {
        const found = find(view, stage);
        if (found !== null) report({ id, ...found });
      }
    },
  };
}
