import { ticks } from 'd3-array';
import type { PlotAxis } from '../../../server/src/sheet/plots/plot';

/** From an axis to pixels, and back. */
export interface AxisScale {
  (value: number): number;
  invert(pixels: number): number;
  /** What the axis reaches from and to, and where that lies. */
  readonly domain: readonly [low: number, high: number];
  readonly range: readonly [from: number, to: number];
}

/** What lies beyond an axis' ends is drawn at them. */
export function scaleOf({ low, high, isLogarithmic }: PlotAxis, from: number, to: number): AxisScale {
  const even = (value: number) => (isLogarithmic ? Math.log(value) : value);
  const [first, span] = [even(low), even(high) - even(low)];
  const share = (value: number) => (span === 0 ? 0.5 : within((even(value) - first) / span));
  const valueAt = (part: number) => (isLogarithmic ? Math.exp(first + part * span) : first + part * span);
  return Object.assign((value: number) => from + share(value) * (to - from), {
    invert: (pixels: number) => valueAt(to === from ? 0.5 : within((pixels - from) / (to - from))),
    domain: [low, high] as const,
    range: [from, to] as const,
  });
}

function within(share: number): number {
  return Math.min(1, Math.max(0, share));
}

/** Round values along an axis, about as many as are asked for. */
export function ticksOf({ low, high, isLogarithmic }: PlotAxis, count: number): readonly number[] {
  if (!isLogarithmic || !(low > 0)) return ticks(low, high, count);
  const decades = Math.log10(high / low);
  const leading = decades < count ? [1, 2, 5] : [1];
  const [first, last] = [Math.floor(Math.log10(low)), Math.ceil(Math.log10(high))];
  const all = Array.from({ length: last - first + 1 }, (_, step) => first + step)
    .flatMap((power) => leading.map((digit) => Number(`${digit}e${power}`)))
    .filter((value) => value >= low && value <= high);
  return all.length < 2 ? ticks(low, high, count) : all;
}
