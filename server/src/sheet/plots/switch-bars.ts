import { switchUses } from '../../checks/rules/switch-table';
import type { CraftView } from '../../craft/view';
import { targetOfPath } from '../target';
import type { SwitchBars } from './plot';

/** The widest pulses that senders give, in µs; common practice. */
const widest = { low: 900, high: 2100 };

/** Where on their channel's travel the functions are on: the channels in order, each from its lower end up. */
export function switchBars(view: CraftView): SwitchBars | null {
  const switches = switchUses(view)
    .map(({ name, channel, on }) => {
      const rest = view.isSet(`switch.${name}.rest`) ? view.quantity(`switch.${name}.rest`) : null;
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
  return {
    kind: 'switches',
    id: 'switch-bars',
    part: 'my-hands',
    title: 'Where each switch is on',
    low: Math.min(widest.low, ...switches.map(({ from }) => from)),
    high: Math.max(widest.high, ...switches.map(({ to }) => to)),
    switches,
  };
}
