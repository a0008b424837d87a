import { packCount, packPath, packQuantity } from '../../../figures/pack-in-view';
import { usualPackResistance } from '../../../figures/pack-source';
import type { CodeRule } from '../../rule';

/** A resistance that was written down against what fresh packs of its kind have. */
export const packResistanceRules: readonly CodeRule[] = [
  {
    ids: ['power/pack-resistance-implausible'],
    scope: 'pack',
    check(view, report) {
      const at = packPath(view, 'resistance');
      const given = packQuantity(view, 'resistance');
      const usual = usualPackResistance(view);
      const capacity = packPath(view, 'capacity');
      if (at === null || capacity === null || given === null || usual === null) return;
      const { likely, low, high } = usual;
      if (given >= (low * likely) / far && given <= high * likely * far) return;
      const values = {
        resistance: view.shown(at),
        usual: view.amount(likely, 'mohm'),
        cells: String(packCount(view, 'cells')),
        capacity: view.shown(capacity),
      };
      report({ id: 'power/pack-resistance-implausible', at, values });
    },
  },
];

/** How many times more a worn or cold pack has than fresh ones of its kind, and less the best. Common practice. */
const far = 4;
