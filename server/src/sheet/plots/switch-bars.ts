import { switchUses, travel } from '../../checks/rules/obey/switch-table';
import type { CraftView } from '../../craft/view';
import { targetOfPath } from '../target';
import type { SwitchBars } from './plot';

/** How much of the sticks' travel is shown beyond either end of it. */
const beyond = 1 / 20;

/** Where on their channel's travel the functions are on: the channels in order, each from its lower end up. */
export function switchBars(view: CraftView): SwitchBars | null {
  const switches = switchUses(view)
    .map(({ name, channel, on }) => {
      const rest = view.quantityOr(`switch.${name}.rest`, null);
      return {
        name: name.replaceAll('-', ' '),
        channel,
        from: 1e6 * on.low,
        to: 1e6 * on.high,
        rest: rest === null ? null : 1e6 * rest,
        target: targetOfPath(view, `switch.${name}.on`),
      };
    })
    .sort((one, other) => one.channel - other.channel || one.from - other.from);
  if (switches.length === 0) return null;
  const shown = shownTravel(view);
  return {
    kind: 'switches',
    id: 'switch-bars',
    part: 'my-hands',
    title: 'Where each switch is on',
    low: Math.min(shown.low, ...switches.map(({ from }) => from)),
    high: Math.max(shown.high, ...switches.map(({ to }) => to)),
    switches,
  };
}

/** What the receiver sends from end to end, and a little more, in µs; where that is unknown, what is set. */
function shownTravel(view: CraftView) {
  const ends = travel(view);
  if (ends === null) return { low: Number.POSITIVE_INFINITY, high: Number.NEGATIVE_INFINITY };
  const margin = beyond * (ends.high - ends.low);
  return { low: 1e6 * (ends.low - margin), high: 1e6 * (ends.high + margin) };
}
