import type { CraftView } from '../../../craft/view';

/** A switch function whose channel and part of the travel are known. Times in seconds. */
export interface SwitchUse {
  readonly name: string;
  readonly channel: number;
  readonly on: { readonly low: number; readonly high: number };
}

/** The part of a channel's travel in which a function is on. */
export type TravelPart = SwitchUse['on'];

export function switchUses(view: CraftView): readonly SwitchUse[] {
  return view.members('switch').flatMap((name) => {
    const channel = view.count(`switch.${name}.channel`);
    const on = view.range(`switch.${name}.on`);
    return channel === null || on === null ? [] : [{ name, channel, on }];
  });
}

/** Every two switches that share a channel, in the order of the script. */
export function sharingPairs(view: CraftView): readonly (readonly [SwitchUse, SwitchUse])[] {
  const uses = switchUses(view);
  return uses.flatMap((one, index) =>
    uses
      .slice(index + 1)
      .filter((other) => other.channel === one.channel)
      .map((other) => [one, other] as const),
  );
}

/** Whether the script says that two functions belong together. */
export function areJoined(view: CraftView, one: SwitchUse, other: SwitchUse): boolean {
  const joined = (name: string) => view.word(`switch.${name}.joined-with`);
  return joined(one.name) === other.name || joined(other.name) === one.name;
}

/** Where both are on; null where they never are together. Parts that only touch don't overlap. */
export function commonPart({ on: one }: SwitchUse, { on: other }: SwitchUse): TravelPart | null {
  const low = Math.max(one.low, other.low);
  const high = Math.min(one.high, other.high);
  return high - low > aHair ? { low, high } : null;
}

export function isInside(part: TravelPart, value: number): boolean {
  return value >= part.low - aHair && value <= part.high + aHair;
}

/** Seconds below which two ends are taken for the same: half a microsecond, less than a channel's step. */
export const aHair = 0.5e-6;

/** Where the switches of so many positions stand, in seconds: evenly between the stick ends. */
export function positionsOf(view: CraftView, count: number): readonly number[] | null {
  const ends = travel(view);
  const centre = view.quantity('receiver.centre');
  if (ends === null || centre === null || count < 2) return null;
  return Array.from({ length: count }, (_, index) => {
    if (index * 2 === count - 1) return centre;
    return ends.low + ((ends.high - ends.low) * index) / (count - 1);
  });
}

/** The ends of every channel's travel. */
export function travel(view: CraftView): TravelPart | null {
  const low = view.quantity('receiver.low');
  const high = view.quantity('receiver.high');
  return low === null || high === null || low >= high ? null : { low, high };
}

/** The last third of the travel at one end, and a little beyond it, where no switch stops short of it. */
export function endPart(view: CraftView, end: 'low' | 'high'): TravelPart | null {
  const ends = travel(view);
  if (ends === null) return null;
  const [third, beyond] = [round((ends.high - ends.low) / 3), 50e-6];
  return end === 'low'
    ? { low: round(ends.low - beyond), high: round(ends.low + third) }
    : { low: round(ends.high - third), high: round(ends.high + beyond) };
}

/** To 10 us. */
function round(seconds: number): number {
  return Math.round(seconds / 10e-6) * 10e-6;
}

/** The end of the travel at which a function is off; null where it is on at both. */
export function offEnd(view: CraftView, part: TravelPart): number | null {
  const ends = travel(view);
  const off = ends === null ? [] : [ends.low, ends.high].filter((end) => !isInside(part, end));
  return off.sort((one, other) => distance(part, other) - distance(part, one))[0] ?? null;
}

function distance({ low, high }: TravelPart, value: number): number {
  return Math.max(low - value, value - high);
}

/** `1750..2050 us` */
export function partText(view: CraftView, { low, high }: TravelPart): string {
  return `${view.exact(low, 'us').split(' ')[0]}..${view.exact(high, 'us')}`;
}
