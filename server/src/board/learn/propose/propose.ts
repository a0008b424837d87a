import type { Catalog } from '../../../catalog/catalog';
import { canBeConfirmed } from '../confirm';
import type { LearnedSetting } from '../learned-settings';
import type { Proposal } from './proposal';
import { proposeParameters } from './ranked';

/** What each setting of a listing may stand for, in their order; null where nothing is near. */
export function proposals(
  settings: readonly LearnedSetting[],
  catalog: Catalog,
): readonly (Proposal | null)[] {
  return settings.map((setting) => {
    const [first, ...others] = proposeParameters(setting, catalog)
      .filter(({ parameter }) => canBeConfirmed(catalog, parameter))
      .map(({ parameter, reason }) => ({ parameter, member: null, part: null, why: sentence(reason) }));
    return first === undefined ? null : { ...first, sureness: 'possible', rivals: others.slice(0, 2) };
  });
}

function sentence(text: string): string {
  return `${text.charAt(0).toUpperCase()}${text.slice(1)}.`;
}
