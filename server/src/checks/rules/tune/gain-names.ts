import type { CraftView } from '../../../craft/view';
import type { AxisName } from '../../../figures/axis';

/** Whether a line sets one of the gains that hold an axis. */
export function isGainSet(view: CraftView, axis: AxisName): boolean {
  return ['proportional', 'integral', 'derivative'].some((gain) => view.isSet(`control.${axis}.${gain}`));
}
