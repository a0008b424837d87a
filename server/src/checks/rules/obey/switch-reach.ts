import type { CraftView } from '../../../craft/view';
import { listed } from '../../report/listed';
import type { CodeRule, RuleFinding, RuleFix } from '../../rule';
import {
  aHair,
  endPart,
  isInside,
  offEnd,
  partText,
  positionsOf,
  type SwitchUse,
  switchUses,
  type TravelPart,
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
  {
    ids: ['obey/position-near-part'],
    scope: 'craft',
    check(view, report) {
      for (const use of switchUses(view)) {
        for (const [setting, what] of standing) {
          const at = `switch.${use.name}.${setting}`;
          const value = view.quantityOr(at, null);
          const gap = value === null ? 0 : Math.max(use.on.low - value, value - use.on.high);
          if (value === null || gap <= aHair || gap > leastInside - aHair) continue;
          const values = { what, value: view.exact(value, 'us'), gap: view.amount(gap, 'us') };
          const least = view.amount(leastInside, 'us');
          report({
            id: 'obey/position-near-part',
            at,
            values: { ...partOf(view, use), ...values, least },
            fixes: farEnd(view, at, use),
          });
        }
      }
    },
  },
];

/** The end of the travel that lies further from the part. */
function farEnd(view: CraftView, set: string, { on }: SwitchUse): readonly RuleFix[] {
  const off = offEnd(view, on);
  if (off === null) return [];
  const to = view.exact(off, 'us');
  return [{ title: 'Write {to}', set, to, look: 'where it really stands: watch the channel' }];
}

/** Where a switch is meant to be off. */
const standing = [
  ['rest', 'The rest position'],
  ['at-loss', 'The position after a lost link'],
] as const;

/** Seconds that a position should stand inside a part, or clear of it. */
const leastInside = 20e-6;

function byTravel(view: CraftView, use: SwitchUse, ends: TravelPart): RuleFinding | null {
  const inside = Math.min(use.on.high, ends.high) - Math.max(use.on.low, ends.low);
  if (inside > leastInside - aHair) return null;
  return {
    id: inside < 0 ? 'obey/range-outside-ends' : 'obey/range-barely-reached',
    at: `switch.${use.name}.on`,
    values: {
      ...partOf(view, use),
      bottom: view.exact(ends.low, 'us'),
      top: view.exact(ends.high, 'us'),
      inside: view.amount(Math.max(0, inside), 'us'),
      least: view.amount(leastInside, 'us'),
    },
    fixes: nearerEnd(view, use),
  };
}

/** The part at the end of the travel that lies nearer. */
function nearerEnd(view: CraftView, { name, on }: SwitchUse): readonly RuleFix[] {
  const centre = view.quantity('receiver.centre');
  const part = centre === null ? null : endPart(view, on.low + on.high < 2 * centre ? 'low' : 'high');
  if (part === null) return [];
  const to = partText(view, part);
  const look = 'where the switch really goes: move it and watch the channel';
  return [{ title: 'Be on in {to}', set: `switch.${name}.on`, to, look }];
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
      ...partOf(view, use),
      count: String(positions.length),
      positions: listed(positions.map((position) => view.short(position, 'us'))),
    },
    fixes: nearerEnd(view, use),
  };
}

function partOf(view: CraftView, { name, on }: SwitchUse) {
  return { function: name, low: view.exact(on.low, 'us'), high: view.exact(on.high, 'us') };
}
