import type { CraftView } from '../../../craft/view';
import type { CodeRule, RuleFinding, RuleFix } from '../../rule';
import { moveToFree } from './free-channel';
import {
  areJoined,
  commonPart,
  isInside,
  offEnd,
  partText,
  type SwitchUse,
  sharingPairs,
  switchUses,
  type TravelPart,
  travel,
} from './switch-table';

/** Nothing else on the arm switch, and no arming at rest or with the link lost. */
export const armSwitchRules: readonly CodeRule[] = [
  {
    ids: ['obey/arm-channel-shared', 'obey/arm-overlaps'],
    scope: 'craft',
    check(view, report) {
      for (const [one, other] of sharingPairs(view)) {
        const arm = [one, other].find(({ name }) => name === 'arm');
        const second = one === arm ? other : one;
        // Permission beside arming is looked at where safety is.
        if (arm !== undefined && second.name !== 'permission') report(shared(view, arm, second));
      }
    },
  },
  {
    ids: ['obey/arm-at-rest'],
    scope: 'craft',
    check(view, report) {
      const part = view.range('switch.arm.on');
      const isKnown = view.isSet('switch.arm.rest');
      const rest = isKnown ? view.quantity('switch.arm.rest') : view.quantity('receiver.low');
      if (part === null || rest === null || !isInside(part, rest)) return;
      report({
        id: 'obey/arm-at-rest',
        at: 'switch.arm.on',
        values: {
          ...endsText(view, part),
          rest: view.exact(rest, 'us'),
          assumed: isKnown ? '' : ' (the low end of the travel is assumed)',
        },
        related: isKnown ? [{ at: 'switch.arm.rest', message: 'The switch rests here.' }] : [],
        fixes: otherEnd(view, part, rest),
      });
    },
  },
  {
    ids: ['obey/arm-at-loss', 'obey/function-at-loss'],
    scope: 'craft',
    check(view, report) {
      for (const use of switchUses(view)) {
        const loss = view.quantity(`switch.${use.name}.at-loss`);
        if (loss === null || !isInside(use.on, loss)) continue;
        if (use.name === 'arm') report(armedAtLoss(view, use.on, loss));
        else if (strongFunctions.has(use.name)) report(calledAtLoss(view, use, loss));
      }
    },
  },
];

/** Functions that take the craft out of the pilot's hands, or turn motors by themselves. */
export const strongFunctions: ReadonlySet<string> = new Set([
  'stop-motors',
  'return',
  'righting',
  'held-start',
  'hold-position',
]);

function shared(view: CraftView, arm: SwitchUse, other: SwitchUse): RuleFinding {
  const common = areJoined(view, arm, other) ? null : commonPart(arm, other);
  const at = common === null ? `switch.${other.name}.channel` : `switch.${other.name}.on`;
  return {
    id: common === null ? 'obey/arm-channel-shared' : 'obey/arm-overlaps',
    at,
    values: {
      channel: String(arm.channel),
      arm: partText(view, arm.on),
      other: other.name,
      range: partText(view, other.on),
      from: common === null ? '' : view.exact(common.low, 'us'),
      to: common === null ? '' : view.exact(common.high, 'us'),
    },
    related: [{ at: 'switch.arm.channel', message: 'Arm is on this channel.' }],
    fixes: moveToFree(view, other.name),
  };
}

/** The same part seen from the other end of the travel, where the switch neither rests nor goes with the link lost. */
function otherEnd(view: CraftView, { low, high }: TravelPart, rest: number): readonly RuleFix[] {
  const ends = travel(view);
  if (ends === null) return [];
  const mirrored = { low: ends.low + ends.high - high, high: ends.low + ends.high - low };
  const loss = view.quantity('switch.arm.at-loss');
  if (isInside(mirrored, rest) || (loss !== null && isInside(mirrored, loss))) return [];
  const to = partText(view, mirrored);
  return [{ title: 'Arm at the other end', set: 'switch.arm.on', to }];
}

function armedAtLoss(view: CraftView, part: TravelPart, loss: number): RuleFinding {
  return {
    id: 'obey/arm-at-loss',
    at: 'switch.arm.at-loss',
    values: { ...endsText(view, part), loss: view.exact(loss, 'us') },
    related: [{ at: 'switch.arm.on', message: 'Arm is on here.' }],
    fixes: storedOff(view, 'switch.arm.at-loss', part),
  };
}

function calledAtLoss(view: CraftView, { name, channel, on }: SwitchUse, loss: number): RuleFinding {
  return {
    id: 'obey/function-at-loss',
    at: `switch.${name}.at-loss`,
    values: {
      channel: String(channel),
      loss: view.exact(loss, 'us'),
      function: name,
      range: partText(view, on),
    },
    fixes: storedOff(view, `switch.${name}.at-loss`, on),
  };
}

/** The end of the travel at which the function is off, as what the receiver does when the link is lost. */
function storedOff(view: CraftView, set: string, part: TravelPart): readonly RuleFix[] {
  const off = offEnd(view, part);
  if (off === null) return [];
  const to = view.exact(off, 'us');
  return [{ title: 'Write {to}, where it is off', set, to, look: 'that the receiver is set to the same' }];
}

function endsText(view: CraftView, { low, high }: TravelPart) {
  return { low: view.exact(low, 'us'), high: view.exact(high, 'us') };
}
