import type { CraftView } from '../../craft/view';
import { loopWaits, stickWaits } from '../../figures/delays';
import type { DelayStack } from './plot';

export function stickDelay(view: CraftView): DelayStack | null {
  return stack('stick-stack', 'my-hands', 'From the stick to thrust', stickWaits(view));
}

export function loopDelay(view: CraftView): DelayStack | null {
  return stack('loop-stack', 'how-late', 'From a turn to thrust', loopWaits(view));
}

function stack(
  id: string,
  part: DelayStack['part'],
  title: string,
  found: ReturnType<typeof loopWaits>,
): DelayStack | null {
  if (found === null) return null;
  const waits = found.waits.map(({ what, likely }) => ({ name: what, milliseconds: 1e3 * likely }));
  return { kind: 'stack', id, part, title, waits };
}
