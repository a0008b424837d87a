import type { CraftView } from '../../../craft/view';
import { usualHalfWidth, type VideoCarrier, videoCarrier } from '../../../figures/video';
import { type Product, thirdOrderProducts } from '../../../physics/intermodulation';
import { listed } from '../../report/render';
import type { CodeRule, RuleFinding } from '../../rule';

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
        if (finding !== null) report(finding);
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
      if (hit !== null) report(mixture(view, own, pilots, hit));
    },
  },
];

/** More than fly together anywhere; the products grow with the cube of it. */
export const mostPilots = 16;

interface Pilot {
  readonly name: string;
  readonly frequency: number;
}

export function otherPilots(view: CraftView): readonly Pilot[] {
  return view.members('radio-club.other').flatMap((name) => {
    const frequency = view.quantity(`radio-club.other.${name}.frequency`);
    return frequency === null ? [] : [{ name, frequency }];
  });
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

interface Hit {
  readonly product: Product;
  /** Index of the carrier that is hit; 0 is the craft's own. */
  readonly victim: number;
  readonly apart: number;
}

/** The product nearest to a carrier that took no part in it, if the own carrier has to do with either. */
function worstHit(carriers: readonly number[]): Hit | null {
  let worst: Hit | null = null;
  for (const product of thirdOrderProducts(carriers)) {
    const makers = [...product.added, product.takenOff];
    for (const [victim, carrier] of carriers.entries()) {
      const apart = Math.abs(product.frequency - carrier);
      const isOurs = victim === 0 || makers.includes(0);
      if (makers.includes(victim) || !isOurs || apart >= usualHalfWidth) continue;
      if (worst === null || apart < worst.apart) worst = { product, victim, apart };
    }
  }
  return worst;
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
