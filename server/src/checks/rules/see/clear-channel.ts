import type { CraftView } from '../../../craft/view';
import { plannedFrequency, usualHalfWidth, type VideoCarrier, videoCarrier } from '../../../figures/video';
import type { RuleFix } from '../../rule';
import { hasThirdOrder, otherPilots } from './other-pilots';
import { isWholeIn, permits } from './radio-permits';

interface FlownChannel {
  readonly band: string;
  readonly number: number;
  readonly frequency: number;
}

/** The nearest channel that is open with its power and that no other pilot needs, of the same band if one is. */
export function clearChannel(view: CraftView): readonly RuleFix[] {
  const own = videoCarrier(view);
  if (own === null) return [];
  const clear = channelsOf(view).filter((channel) => isClear(view, own, channel));
  const inBand = clear.filter(({ band }) => band === view.word('video.band'));
  const [best] = [...(inBand.length > 0 ? inBand : clear)].sort(
    (one, other) => Math.abs(one.frequency - own.frequency) - Math.abs(other.frequency - own.frequency),
  );
  return best === undefined ? [] : [written(view, own, best)];
}

function written(
  view: CraftView,
  { path }: VideoCarrier,
  { band, number, frequency }: FlownChannel,
): RuleFix {
  const at = view.exact(frequency, 'MHz');
  const look = 'that the goggles are on it, and that nobody else is';
  if (path === 'video.frequency') return { title: 'Write {to}', set: path, to: at, look };
  const also = band === view.word('video.band') ? [] : [{ set: 'video.band', to: band }];
  const title = 'Take channel {to} of band {band}, {at}';
  return { title, values: { band, at }, set: 'video.channel', to: String(number), look, also };
}

/** Of the plans that the transmitter knows, where the script says them. */
function channelsOf(view: CraftView): readonly FlownChannel[] {
  const plans = view.words('video.plans');
  return [...view.catalog.videoBands.values()]
    .filter(({ name }) => plans === null || plans.includes(name))
    .flatMap((band) =>
      band.channels.flatMap((_, index) => {
        const frequency = plannedFrequency(band, index + 1);
        return frequency === null ? [] : [{ band: band.name, number: index + 1, frequency }];
      }),
    );
}

function isClear(view: CraftView, { halfWidth }: VideoCarrier, { frequency }: FlownChannel): boolean {
  const open = permits(view);
  const power = view.quantity('video.power') ?? 0;
  const isOpen =
    open === null ||
    open.some((permit) => permit.limit >= power && isWholeIn(permit, { frequency, halfWidth }));
  const pilots = otherPilots(view).map((other) => other.frequency);
  const apart = Math.max(halfWidth + usualHalfWidth, view.quantity('radio-club.spacing') ?? 0);
  return (
    isOpen &&
    pilots.every((other) => Math.abs(other - frequency) >= apart) &&
    !hasThirdOrder([frequency, ...pilots])
  );
}
