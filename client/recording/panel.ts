import type { PlotAxis } from '../../server/src/sheet/plots/plot';
import { tickText } from '../sheet/plots/figure-text';
import { shape, words } from '../sheet/plots/frame';
import { pathThrough } from '../sheet/plots/paths';
import { type AxisScale, scaleOf, ticksOf } from '../sheet/plots/scales';

/** A part of a drawing with a scale of its own, above or below others that share the other scale; pixels. */
export interface Panel {
  readonly axis: PlotAxis;
  readonly top: number;
  readonly bottom: number;
}

/** Where the panels of a drawing begin and end, pixels. */
export interface PanelSides {
  readonly left: number;
  readonly right: number;
}

export function panelScale({ axis, top, bottom }: Panel): AxisScale {
  return scaleOf(axis, bottom, top);
}

/** Lines across a panel at these values, each named at the left, and what it is in at the top. */
export function rules(
  panel: Panel,
  values: readonly number[],
  { left, right }: PanelSides,
): readonly SVGElement[] {
  const y = panelScale(panel);
  return values.flatMap((value) => [
    shape('line', { class: 'rule', x1: left, x2: right, y1: y(value), y2: y(value) }),
    words(tickText(value), { class: 'tick', x: left - 5, y: y(value) + 4, 'text-anchor': 'end' }),
  ]);
}

/** Values along the bottom, with their unit at the right end. */
export function along(
  axis: PlotAxis,
  x: AxisScale,
  bottom: number,
  { left, right }: PanelSides,
): readonly SVGElement[] {
  const room = right - 24;
  return [
    ...ticksOf(axis, right - left < 340 ? 4 : 8)
      .filter((value) => x(value) < room)
      .map((value) =>
        words(tickText(value), { class: 'tick', x: x(value), y: bottom + 14, 'text-anchor': 'middle' }),
      ),
    words(axis.unit, { class: 'tick', x: right, y: bottom + 14, 'text-anchor': 'end' }),
  ];
}

/** A curve over values that rise; broken where `shows` says so, and where it leaves the other scale. */
export function curvePath(
  at: readonly number[],
  values: readonly number[],
  x: AxisScale,
  y: AxisScale,
  shows: (index: number) => boolean = () => true,
): string {
  const [low, high] = x.domain;
  return pathThrough(
    values.map((value, index) => {
      const place = at[index] ?? Number.NaN;
      const isShown = Number.isFinite(value) && place >= low && place <= high && shows(index);
      return isShown ? [x(place), y(value)] : null;
    }),
  );
}

/** Round values of an axis that has steps of its own, such as quarters of a turn. */
export function stepsOf({ low, high }: PlotAxis, step: number): readonly number[] {
  const first = Math.ceil(low / step);
  return Array.from({ length: Math.floor(high / step) - first + 1 }, (_, at) => (first + at) * step);
}
