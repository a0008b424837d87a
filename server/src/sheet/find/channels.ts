import type { Catalog } from '../../catalog/catalog';
import { isWholeIn, permitsIn } from '../../checks/rules/see/radio-permits';
import type { CraftView } from '../../craft/view';
import { plannedFrequency, usualHalfWidth, videoCarrier } from '../../figures/video';
import { productsInUse } from '../../physics/intermodulation';
import { shortNumber } from '../../units/number-text';
import { parseQuantity } from '../../units/quantity';

/** "Which channels for five of us?" */
export interface ChannelWish {
  /** How many fly together. */
  readonly pilots: number;
  /** Names in the catalogue. */
  readonly region: string;
  readonly licence: string;
  /** The plans that everybody's transmitter knows; null: any. */
  readonly plans: readonly string[] | null;
  /** W of radiated power: only where the rules allow as much; null: that is not looked at. */
  readonly power: number | null;
  /** Hz of those who stay where they are; they count among the pilots. */
  readonly keep: readonly number[];
}

export interface PlannedChannel {
  /** The plan and the number; a frequency may have several. */
  readonly names: readonly { readonly band: string; readonly channel: number }[];
  /** MHz */
  readonly frequency: number;
  /** Whether it stays where it was. */
  readonly isKept: boolean;
}

/** Channels for everybody, or why there are none. */
export interface ChannelPlan {
  readonly pilots: number;
  readonly region: string;
  /** The whole of it in a sentence. */
  readonly answer: string;
  /** Rising; empty where so many do not fit. */
  readonly channels: readonly PlannedChannel[];
  /** MHz between the two that are nearest to each other; null for one pilot alone. */
  readonly spacing: number | null;
  /** How many products of third order fall on a channel in use. */
  readonly products: number;
  /** MHz from such a product to the channel that it is nearest to; null where there is none. */
  readonly nearestProduct: number | null;
  readonly caution: string;
}

/** More than fly together anywhere. */
export const mostPilotsPlanned = 12;

const caution =
  'By the rules listed here and by pictures as wide as analogue ones: local rules, the licence and whoever runs the meeting decide. Look at a receiver before anybody takes off.';

/** How close two pictures may come: then they touch. */
const leastSpacing = 2 * usualHalfWidth;

/** Goggles receive a stretch of frequencies, not two that are far apart. */
const stretch = 1.3;

/** What a craft says of where it flies and what its transmitter can do. */
export function channelWishOf(view: CraftView, pilots: number, keepsOthers: boolean): ChannelWish {
  const others = view.members('radio-club.other').flatMap((name) => {
    const frequency = view.quantity(`radio-club.other.${name}.frequency`);
    return frequency === null ? [] : [frequency];
  });
  return {
    pilots,
    region: view.word('rules.region') ?? '',
    licence: view.word('rules.licence') ?? 'none',
    plans: view.words('video.plans'),
    power: null,
    keep: keepsOthers ? others : [],
  };
}

/** Where the craft sends now, so that a plan stays within what its goggles receive. */
export function sendsAt(view: CraftView): number | null {
  return videoCarrier(view)?.frequency ?? null;
}

/**
 * The plan with the fewest products of third order on channels in use, of those the one with the widest spacing, of
 * those the one whose products keep farthest away: all plans are weighed that could be better. A generator: it pauses
 * again and again.
 */
export function* channelPlan(
  catalog: Catalog,
  wish: ChannelWish,
  near: number | null = null,
): Generator<void, ChannelPlan> {
  const { pilots, keep } = wish;
  const free = channelsIn(catalog, wish, near ?? keep[0] ?? null);
  const search = new Plans(
    free.map(({ frequency }) => frequency),
    keep,
    pilots,
  );
  yield* search.all();
  const { best } = search;
  if (best === null) return without(wish, mostThatFit(free, keep));
  const channels = best.carriers.map((frequency): PlannedChannel => {
    const known = free.find((one) => one.frequency === frequency);
    return {
      names: known?.names ?? [],
      frequency: frequency / 1e6,
      isKept: keep.includes(frequency),
    };
  });
  const spacing = Number.isFinite(best.spacing) ? best.spacing / 1e6 : null;
  const nearestProduct = Number.isFinite(best.nearest) ? best.nearest / 1e6 : null;
  return {
    pilots,
    region: wish.region,
    answer: answerOf(channels, spacing, best.products, nearestProduct),
    channels,
    spacing,
    products: best.products,
    nearestProduct,
    caution,
  };
}

interface Free {
  readonly frequency: number;
  readonly names: PlannedChannel['names'];
}

/** Channels whose whole width is open, rising; those of several plans once. */
function channelsIn(catalog: Catalog, wish: ChannelWish, near: number | null): readonly Free[] {
  const region = catalog.region(wish.region);
  const open = region === undefined ? [] : permitsIn(region, wish.licence);
  const byFrequency = new Map<number, { band: string; channel: number }[]>();
  for (const band of catalog.videoBands.values()) {
    if (wish.plans !== null && !wish.plans.includes(band.name)) continue;
    const halfWidth = parseQuantity(band.halfWidth)?.value ?? usualHalfWidth;
    for (const at of band.channels.keys()) {
      const frequency = plannedFrequency(band, at + 1);
      if (frequency === null) continue;
      const isOpen = open.some(
        (permit) => permit.limit >= (wish.power ?? 0) && isWholeIn(permit, { frequency, halfWidth }),
      );
      if (isOpen)
        byFrequency.set(frequency, [
          ...(byFrequency.get(frequency) ?? []),
          { band: band.name, channel: at + 1 },
        ]);
    }
  }
  const all = [...byFrequency].map(([frequency, names]) => ({ frequency, names }));
  all.sort((one, other) => one.frequency - other.frequency);
  const within = (centre: number) =>
    all.filter(({ frequency }) => frequency < centre * stretch && frequency > centre / stretch);
  if (near !== null) return within(near);
  const stretches = all.map(({ frequency }) => within(frequency));
  return stretches.sort((one, other) => other.length - one.length)[0] ?? [];
}

interface Plan {
  /** Hz, rising. */
  readonly carriers: readonly number[];
  readonly products: number;
  readonly spacing: number;
  readonly nearest: number;
}

/** Pauses after so many plans. */
const betweenPauses = 200;

/** Goes through the plans from the lowest channel up, and leaves what can't be better any more. */
class Plans {
  best: Plan | null = null;
  private count = 0;

  constructor(
    private readonly free: readonly number[],
    private readonly kept: readonly number[],
    private readonly pilots: number,
  ) {}

  *all(): Generator<void> {
    if (this.kept.length <= this.pilots) yield* this.from([...this.kept], 0);
  }

  private *from(carriers: readonly number[], first: number): Generator<void> {
    this.count += 1;
    if (this.count % betweenPauses === 0) yield;
    const plan = planOf(carriers);
    // With more carriers there are as many products or more, and none lies farther apart.
    if (this.best !== null && !isBetter(plan, this.best)) return;
    if (carriers.length === this.pilots) {
      this.best = plan;
      return;
    }
    for (let at = first; at < this.free.length; at += 1) {
      const next = this.free[at] ?? 0;
      if (carriers.every((one) => Math.abs(one - next) >= leastSpacing))
        yield* this.from([...carriers, next], at + 1);
    }
  }
}

function planOf(carriers: readonly number[]): Plan {
  const rising = [...carriers].sort((one, other) => one - other);
  const gaps = rising.slice(1).map((frequency, at) => frequency - (rising[at] ?? 0));
  const { count, nearest } = productsInUse(rising, usualHalfWidth);
  return { carriers: rising, products: count, spacing: Math.min(Number.POSITIVE_INFINITY, ...gaps), nearest };
}

function isBetter(one: Plan, other: Plan): boolean {
  if (one.products !== other.products) return one.products < other.products;
  if (one.spacing !== other.spacing) return one.spacing > other.spacing;
  return one.nearest > other.nearest;
}

/** From the lowest up, each as close as it may come. */
function mostThatFit(free: readonly Free[], keep: readonly number[]): number {
  const taken = [...keep];
  for (const { frequency } of free)
    if (taken.every((one) => Math.abs(one - frequency) >= leastSpacing)) taken.push(frequency);
  return taken.length;
}

function without({ pilots, region }: ChannelWish, most: number): ChannelPlan {
  return {
    pilots,
    region,
    answer:
      most === 0
        ? 'No channel of these plans lies whole in a band that the rules listed for this region open.'
        : `So many don’t fit side by side: ${most} at most, with pictures ${shortNumber(leastSpacing / 1e6)} MHz wide in what the rules open. Fly in turns.`,
    channels: [],
    spacing: null,
    products: 0,
    nearestProduct: null,
    caution,
  };
}

function answerOf(
  channels: readonly PlannedChannel[],
  spacing: number | null,
  products: number,
  nearestProduct: number | null,
): string {
  const names = channels.map(channelText).join(', ');
  const apart = apartText({ spacing, products, nearestProduct });
  return `${names}${apart === null ? '' : `, ${apart}`}.`;
}

/** How well a plan keeps its channels apart; null of one channel alone. */
export function apartText({
  spacing,
  products,
  nearestProduct: nearest,
}: Pick<ChannelPlan, 'spacing' | 'products' | 'nearestProduct'>): string | null {
  const apart = spacing === null ? [] : [`at least ${shortNumber(spacing)} MHz apart`];
  const clear =
    products === 0
      ? nearest === null
        ? []
        : [
            `no product of third order falls on a channel in use, the nearest passes it by ${shortNumber(nearest)} MHz`,
          ]
      : [
          `${products === 1 ? '1 product' : `${products} products`} of third order ${products === 1 ? 'falls' : 'fall'} on channels in use, and no plan has fewer`,
        ];
  const told = [...apart, ...clear];
  return told.length === 0 ? null : told.join('; ');
}

/** `channel 4 of band r at 5769 MHz` */
export function channelText({ names, frequency }: PlannedChannel): string {
  const [first] = names;
  const where = first === undefined ? '' : `channel ${first.channel} of band ${first.band} at `;
  return `${where}${shortNumber(frequency, 5)} MHz`;
}
