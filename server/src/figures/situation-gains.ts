import type { CraftView } from '../craft/view';
import type { Axis } from '../physics/loop';

type Gains = Axis['gains'];

/**
 * The gains that count at a throttle (a share): at high throttle the situation's shares come in evenly, from its
 * beginning up to full throttle. Null where the script speaks of that and can't be read.
 */
export function gainsAtThrottle(view: CraftView, gains: Gains, throttle: number): Gains | null {
  const path = (word: string) => `control.when.high-throttle.${word}`;
  if (!view.isSet(path('from'))) return gains;
  const from = view.quantity(path('from'));
  if (from === null || from >= 1) return null;
  const way = Math.max(0, Math.min(1, (throttle - from) / (1 - from)));
  const [proportional, integral, derivative] = (['proportional', 'integral', 'derivative'] as const).map(
    (gain) => {
      const share = view.quantity(path(gain));
      return share === null ? null : gains[gain] * (1 + way * (share - 1));
    },
  );
  if (proportional == null || integral == null || derivative == null) return null;
  return { proportional, integral, derivative };
}
