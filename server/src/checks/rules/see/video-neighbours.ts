import type { CraftView } from '../../../craft/view';
import { usualHalfWidth, type VideoCarrier, videoCarrier } from '../../../figures/video';
import { listed } from '../../report/listed';
import type { CodeRule, RuleFinding } from '../../rule';
import { clearChannel } from './clear-channel';
import { type Hit, mostPilots, otherPilots, type Pilot, worstHit } from './other-pilots';

/** The pictures of those who fly at the same time. */
export const videoNeighbourRules: readonly CodeRule[] = [
  {
    ids: ['see/channel-overlaps', 'see/closer-than-agreed'],
    scope: 'craft',
    check(view, report) {
      const own = videoCarrier(view);
      if (own === null) return;
      for (const other of otherPilots(view)) {
        const finding = tooClose(view, own, other);
        if (finding !== null) report(elsewhere(view, finding));
      }
    },
  },
  {
    ids: ['see/third-order'],
    scope: 'craft',
    check(view, report) {
      const own = videoCarrier(view);
      const pilots = otherPilots(view).slice(0, mostPilots);
      if (own === null || pilots.length === 0) return;
      const hit = worstHit([own.frequency, ...pilots.map(({ frequency }) => frequency)]);
      if (hit !== null) report(elsewhere(view, mixture(view, own, pilots, hit)));
    },
  },
];

/** With a channel that is clear of the others, sought when somebody looks at it. */
function elsewhere(view: CraftView, finding: RuleFinding): RuleFinding {
  return {
    ...finding,
    get fixes() {
      return clearChannel(view.anew());
    },
  };
}

function tooClose(view: CraftView, own: VideoCarrier, other: Pilot): RuleFinding | null {
  const apart = Math.abs(own.frequency - other.frequency);
  const width = own.halfWidth + usualHalfWidth;
  const spacing = view.quantity('radio-club.spacing');
  const isAgreed = view.isSet('radio-club.spacing') && spacing !== null && apart < spacing;
  if (apart >= width && !isAgreed) return null;
  return {
    id: apart < width ? 'see/channel-overlaps' : 'see/closer-than-agreed',
    at: own.path,
    values: {
      frequency: view.exact(own.frequency, 'MHz'),
      apart: view.exact(apart, 'MHz'),
      pilot: other.name,
      other: view.exact(other.frequency, 'MHz'),
      width: view.exact(width, 'MHz'),
      spacing: view.shown('radio-club.spacing'),
      better: view.shown('radio-club.spacing'),
    },
    related: [{ at: `radio-club.other.${other.name}.frequency`, message: `${other.name} flies here.` }],
  };
}

function mixture(
  view: CraftView,
  own: VideoCarrier,
  pilots: readonly Pilot[],
  { product, victim, apart }: Hit,
): RuleFinding {
  const megahertz = (value: number) => view.exact(value, 'MHz');
  const all = [{ name: 'this craft', frequency: own.frequency }, ...pilots];
  const makers = [...new Set([...product.added, product.takenOff])].flatMap((index) => all[index] ?? []);
  const hit = all[victim];
  return {
    id: 'see/third-order',
    at: own.path,
    values: {
      makers: listed(makers.map(({ name, frequency }) => `${name} (${megahertz(frequency)})`)),
      product: megahertz(product.frequency),
      apart: megahertz(apart),
      victim: hit?.name ?? '',
      frequency: megahertz(hit?.frequency ?? 0),
    },
    related: makers
      .filter(({ name }) => name !== 'this craft')
      .map(({ name }) => ({ at: `radio-club.other.${name}.frequency`, message: `${name} flies here.` })),
  };
}
