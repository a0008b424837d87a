import type { CraftView } from '../../../craft/view';
import {
  chainNames,
  kindOf,
  lowestLowpass,
  lowpassCutoff,
  type Stage,
  stagesOf,
} from '../../../figures/filter-stages';
import type { CodeRule, RuleFinding } from '../../rule';

/** Filters that do what another one has done already. */
export const filtersAlikeRules: readonly CodeRule[] = [
  {
    ids: ['tune/filters-alike'],
    scope: 'pack',
    check(view, report) {
      for (const chain of chainNames) {
        const stages = stagesOf(view, chain);
        for (const [index, stage] of stages.entries()) {
          const twin = stages.slice(0, index).find((other) => areAlike(view, other, stage));
          if (twin !== undefined) report(alike(view, twin, stage));
        }
      }
    },
  },
  {
    ids: ['tune/derivative-filter-idle'],
    scope: 'pack',
    check(view, report) {
      const lowest = lowestLowpass(view, stagesOf(view, 'gyro'))?.cutoff;
      if (lowest === undefined) return;
      for (const stage of stagesOf(view, 'derivative')) {
        const cutoff = lowpassCutoff(view, stage);
        if (cutoff === null || cutoff < idleFrom * lowest) continue;
        report({
          id: 'tune/derivative-filter-idle',
          at: `${stage.path}.cutoff`,
          values: { path: stage.path, cutoff: view.amount(cutoff, 'Hz'), gyro: view.amount(lowest, 'Hz') },
        });
      }
    },
  },
];

/** Cutoffs that lie within this share of each other cut the same. A choice of ours. */
const sameWithin = 0.1;
/** A cutoff so many times above the gyro's has next to nothing left to cut. A choice of ours. */
const idleFrom = 2;

function areAlike(view: CraftView, one: Stage, other: Stage): boolean {
  const kind = kindOf(view, one);
  if (kind === null || kind !== kindOf(view, other)) return false;
  if (kind === 'follow-motors') return true;
  const [first, second] = [lowpassCutoff(view, one), lowpassCutoff(view, other)];
  return first !== null && second !== null && Math.abs(first - second) <= sameWithin * first;
}

function alike(view: CraftView, one: Stage, other: Stage): RuleFinding {
  const cutoff = lowpassCutoff(view, other);
  return {
    id: 'tune/filters-alike',
    at: `${other.path}.kind`,
    values: {
      one: one.path,
      other: other.path,
      kind: view.shown(`${other.path}.kind`),
      cutoff: cutoff === null ? '' : view.short(cutoff, 'Hz'),
    },
    related: [{ at: `${one.path}.kind`, message: 'The other one.' }],
  };
}
