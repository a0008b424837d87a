import type { CraftView } from '../../../craft/view';
import type { RuleFix } from '../../rule';

/** The lowest channel above the sticks that nothing listens to and that the link brings; null where none is left. */
export function freeChannel(view: CraftView): number | null {
  const taken = new Set(channelPaths(view).map((path) => view.count(path)));
  const most = arrivingCount(view) ?? fewestArriving;
  for (let channel = 5; channel <= most; channel += 1) if (!taken.has(channel)) return channel;
  return null;
}

/** "Move locate to channel 7", for a function that should be on a channel of its own. */
export function moveToFree(view: CraftView, name: string): readonly RuleFix[] {
  const channel = freeChannel(view);
  if (channel === null) return [];
  const to = String(channel);
  return [{ title: 'Move {name} to channel {to}', values: { name }, set: `switch.${name}.channel`, to }];
}

/** What a receiver brings whose link nobody has named: fewer would leave no room for switches. */
const fewestArriving = 8;

/** How many channels arrive: what the script says, else what its link carries; null where neither is known. */
function arrivingCount(view: CraftView): number | null {
  if (view.isSet('receiver.channels')) return view.count('receiver.channels');
  return view.catalog.link(view.word('receiver.link') ?? '')?.channels ?? null;
}

/** Settings that name a channel which something other than the sticks listens to. */
function channelPaths(view: CraftView): readonly string[] {
  const switches = view.members('switch').map((name) => `switch.${name}.channel`);
  return [...switches, 'receiver.strength-channel', 'signal-loss.switch-channel'];
}
