import type { CraftView } from '../../craft/view';
import type { CodeRule, RuleFinding } from '../rule';
import {
  aHair,
  isInside,
  listed,
  type Part,
  positionsOf,
  type SwitchUse,
  switchUses,
  travel,
} from './switch-table';

/** Whether a switch can go into its function's part of the travel, and out of it again. */
export const switchReachRules: readonly CodeRule[] = [
  {
    ids: [
      'obey/range-outside-ends',
      'obey/range-barely-reached',
      'obey/range-between-positions',
      'obey/range-needs-slider',
      'obey/switch-always-on',
    ],
    scope: 'craft',
    check(view, report) {
      const ends = travel(view);
      if (ends === null) return;
      for (const use of switchUses(view)) {
        const finding = byTravel(view, use, ends) ?? byPositions(view, use);
        if (finding !== null) report(finding);
      }
    },
  },
];

/** Seconds that a position should stand inside a part. */
const leastInside = 25e-6;

function byTravel(view: CraftView, use: SwitchUse, ends: Part): RuleFinding | null {
  const inside = Math.min(use.on.high, ends.high) - Math.max(use.on.low, ends.low);
  if (inside > leastInside - aHair) return null;
  return {
    id: inside < 0 ? 'obey/range-outside-ends' : 'obey/range-barely-reached',
    at: `switch.${use.name}.on`,
    values: {
      ...told(view, use),
      bottom: view.exact(ends.low, 'us'),
      top: view.exact(ends.high, 'us'),
      inside: view.amount(Math.max(0, inside), 'us'),
      least: view.amount(leastInside, 'us'),
    },
  };
}

function byPositions(view: CraftView, use: SwitchUse): RuleFinding | null {
  const path = `switch.${use.name}.positions`;
  const count = view.count(path);
  if (count === null && view.isSet(path)) return null;
  const positions = positionsOf(view, count ?? 3);
  if (positions === null) return null;
  const reached = positions.filter((position) => isInside(use.on, position)).length;
  if (reached > 0 && (reached < positions.length || count === null)) return null;
  const missed = count === null ? 'obey/range-needs-slider' : 'obey/range-between-positions';
  return {
    id: reached === 0 ? missed : 'obey/switch-always-on',
    at: `switch.${use.name}.on`,
    values: {
      ...told(view, use),
      count: String(positions.length),
      positions: listed(positions.map((position) => view.short(position, 'us'))),
    },
  };
}

function told(view: CraftView, { name, on }: SwitchUse) {
  return { function: name, low: view.exact(on.low, 'us'), high: view.exact(on.high, 'us') };
}
