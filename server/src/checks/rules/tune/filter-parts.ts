import type { CraftView } from '../../../craft/view';
import { axisNames } from '../../../figures/axis-names';
import {
  allStages,
  type ChainName,
  chainNames,
  filterSettings,
  isSaid,
  kindOf,
  neededBy,
  stagesOf,
  takenBy,
} from '../../../figures/filter-stages';
import { listed } from '../../report/listed';
import type { CodeRule } from '../../rule';
import { kindFor, missingParts } from './filter-fixes';
import { isGainSet } from './gains';

/** Filters that lack a part, parts that their kind has no use for, and chains of which nothing is said. */
export const filterPartRules: readonly CodeRule[] = [
  {
    ids: ['tune/filter-incomplete'],
    scope: 'pack',
    whole: true,
    check(view, report) {
      for (const stage of allStages(view)) {
        const kind = kindOf(view, stage);
        if (kind === null) continue;
        const missing = (neededBy.get(kind) ?? []).filter((one) => view.isMissing(`${stage.path}.${one}`));
        if (missing.length === 0) continue;
        const values = { path: stage.path, kind, lacks: listed(missing) };
        const fixes = missingParts(view, stage, missing);
        report({ id: 'tune/filter-incomplete', at: `${stage.path}.kind`, values, fixes });
      }
    },
  },
  {
    ids: ['tune/filter-kind-missing'],
    scope: 'craft',
    whole: true,
    check(view, report) {
      for (const { path } of allStages(view)) {
        const setting = filterSettings.find((one) => one !== 'blade-tone' && view.isSet(`${path}.${one}`));
        if (setting === undefined || !view.isMissing(`${path}.kind`)) continue;
        const values = { path, setting };
        const fixes = kindFor(view, path);
        report({ id: 'tune/filter-kind-missing', at: `${path}.${setting}`, values, fixes });
      }
    },
  },
  {
    ids: ['tune/filter-setting-unused'],
    scope: 'pack',
    check(view, report) {
      for (const stage of allStages(view)) {
        const kind = kindOf(view, stage);
        if (kind === null) continue;
        const used = [...(neededBy.get(kind) ?? []), ...(takenBy.get(kind) ?? [])];
        for (const setting of filterSettings) {
          const at = `${stage.path}.${setting}`;
          if (used.includes(setting) || !view.isSet(at)) continue;
          const values = { path: stage.path, kind, setting, given: view.shown(at) };
          report({ id: 'tune/filter-setting-unused', at, values });
        }
      }
    },
  },
  {
    ids: ['tune/chain-contradicted'],
    scope: 'pack',
    check(view, report) {
      for (const chain of chainNames) {
        // For one pack alone it may well be meant.
        const origin = view.setting(`${chain}.chain`)?.origin;
        if (origin === undefined || origin.line.section.pack !== null) continue;
        const working = stagesOf(view, chain).find((stage) => kindOf(view, stage) !== 'none');
        if (view.word(`${chain}.chain`) !== 'none' || working === undefined) continue;
        report({
          id: 'tune/chain-contradicted',
          at: `${chain}.chain`,
          values: { chain, filter: working.path, kind: view.shown(`${working.path}.kind`) },
          related: [{ at: `${working.path}.kind`, message: 'This filter.' }],
        });
      }
    },
  },
  {
    ids: ['tune/gyro-chain-unsaid'],
    scope: 'craft',
    whole: true,
    check(view, report) {
      if (!isTuned(view) || !isSurelyUnsaid(view, 'gyro')) return;
      report({ id: 'tune/gyro-chain-unsaid', at: 'gyro.chain' });
    },
  },
  {
    ids: ['tune/derivative-chain-unsaid'],
    scope: 'craft',
    whole: true,
    check(view, report) {
      const axis = axisNames.find((one) => (view.quantity(`control.${one}.derivative`) ?? 0) > 0);
      if (axis === undefined || !isSurelyUnsaid(view, 'derivative')) return;
      report({
        id: 'tune/derivative-chain-unsaid',
        at: 'derivative.chain',
        values: { axis, gain: view.shown(`control.${axis}.derivative`) },
      });
    },
  },
];

/** Whether the script says anything of how the craft flies: without it, its filters are not missed either. */
function isTuned(view: CraftView): boolean {
  return view.isSet('gyro.rate') || axisNames.some((axis) => isGainSet(view, axis));
}

/** While an include is missing, a chain may stand in it. */
function isSurelyUnsaid(view: CraftView, chain: ChainName): boolean {
  const isOpen = view.isMissing(`${chain}.chain`) || view.word(`${chain}.chain`) === 'in-order';
  return isOpen && view.craft.isComplete() && !isSaid(view, chain);
}
