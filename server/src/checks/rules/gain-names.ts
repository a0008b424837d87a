import type { CraftView } from '../../craft/view';

export const axes = ['roll', 'pitch', 'yaw'] as const;

/** Whether a line sets one of the gains that hold an axis. */
export function isGainSet(view: CraftView, axis: (typeof axes)[number]): boolean {
  return ['proportional', 'integral', 'derivative'].some((gain) => view.isSet(`control.${axis}.${gain}`));
}
