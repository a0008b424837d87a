import { mostPilots, otherPilots } from '../../checks/rules/see/other-pilots';
import { permits } from '../../checks/rules/see/radio-permits';
import type { CraftView } from '../../craft/view';
import { usualHalfWidth, videoCarrier } from '../../figures/video';
import { thirdOrderProducts } from '../../physics/intermodulation';
import type { CarrierStrip } from './plot';

/** MHz shown on either side of what must be seen. */
const room = 30;

/** The craft's own picture among those who fly with it, and what the carriers make of each other. */
export function carrierStrip(view: CraftView): CarrierStrip | null {
  const own = videoCarrier(view);
  if (own === null) return null;
  const others = otherPilots(view).slice(0, mostPilots);
  const carriers = [
    { name: 'this craft', frequency: own.frequency, halfWidth: own.halfWidth, isOwn: true },
    ...others.map(({ name, frequency }) => ({ name, frequency, halfWidth: usualHalfWidth, isOwn: false })),
  ].map((one) => ({ ...one, frequency: one.frequency / 1e6, halfWidth: one.halfWidth / 1e6 }));
  const frequencies = carriers.map(({ frequency }) => frequency);
  const near = (permits(view) ?? [])
    .map(({ from, to, limit, licence }) => ({
      from: from / 1e6,
      to: to / 1e6,
      name: `${view.short(limit, 'mW')} ${licence === 'none' ? 'without a licence' : `with an ${licence} licence`}`,
    }))
    .filter(({ from, to }) => frequencies.some((one) => one > from - 10 * room && one < to + 10 * room));
  const edges = [...frequencies, ...near.flatMap(({ from, to }) => [from, to])];
  const [low, high] = [Math.min(...edges) - room, Math.max(...edges) + room];
  const products = thirdOrderProducts(frequencies)
    .map(({ frequency, added, takenOff }) => {
      const [one, other, off] = [...added, takenOff].map((index) => carriers[index]?.name ?? '');
      return { frequency, name: one === other ? `2 × ${one} − ${off}` : `${one} + ${other} − ${off}` };
    })
    .filter(({ frequency }) => frequency >= low && frequency <= high);
  return {
    kind: 'carriers',
    id: 'carriers',
    part: 'who-sees-me',
    title: 'Who sends where',
    low,
    high,
    open: near,
    carriers,
    products,
  };
}
