import type { CraftView } from '../../../craft/view';
import type { CodeRule, RuleFinding } from '../../rule';
import { strongFunctions } from './arm-switch';
import { moveToFree } from './free-channel';
import { aHair, areJoined, commonPart, partText, type SwitchUse, sharingPairs } from './switch-table';

/** Functions of one channel that come on together or by turns; the arm switch has rules of its own. */
export const switchOverlapRules: readonly CodeRule[] = [
  {
    ids: ['obey/strong-switch-overlap', 'obey/switch-overlap', 'obey/switch-touches'],
    scope: 'craft',
    check(view, report) {
      for (const [one, other] of sharingPairs(view)) {
        const isArm = one.name === 'arm' || other.name === 'arm';
        if (isArm || areJoined(view, one, other)) continue;
        const common = commonPart(one, other);
        const gap = Math.max(one.on.low, other.on.low) - Math.min(one.on.high, other.on.high);
        if (common === null && gap >= leastGap - aHair) continue;
        report(found(view, one, other, common, gap));
      }
    },
  },
];

/** Seconds between two parts below which a trembling channel may call both. */
const leastGap = 20e-6;

function found(
  view: CraftView,
  one: SwitchUse,
  other: SwitchUse,
  common: SwitchUse['on'] | null,
  gap: number,
): RuleFinding {
  const isStrong = strongFunctions.has(one.name) || strongFunctions.has(other.name);
  const overlap = isStrong ? 'obey/strong-switch-overlap' : 'obey/switch-overlap';
  return {
    id: common === null ? 'obey/switch-touches' : overlap,
    at: `switch.${other.name}.on`,
    values: {
      channel: String(one.channel),
      one: one.name,
      first: partText(view, one.on),
      other: other.name,
      second: partText(view, other.on),
      from: common === null ? '' : view.exact(common.low, 'us'),
      to: common === null ? '' : view.exact(common.high, 'us'),
      gap: view.amount(Math.max(0, gap), 'us'),
      least: view.amount(leastGap, 'us'),
    },
    related: [{ at: `switch.${one.name}.on`, message: 'The part of {one}.', values: { one: one.name } }],
    fixes: moveToFree(view, other.name),
  };
}
