import type { CraftView } from '../../craft/view';
import { curveValue, monotoneCurve } from '../../physics/monotone-curve';
import type { Line, LinePlot } from './plot';

const axes = ['roll', 'pitch', 'yaw'];
/** Shares of the stick's travel from the middle to its end. */
const travel = Array.from({ length: 51 }, (_, step) => step / 50);
const degrees = 180 / Math.PI;

/** How fast the craft is asked to turn for each place of the sticks. */
export function stickCurves(view: CraftView): LinePlot | null {
  const lines = sameTogether(axes.flatMap((axis) => lineOf(view, axis)));
  if (lines.length === 0) return null;
  const most = Math.max(...lines.flatMap(({ values }) => values.map((value) => value ?? 0)));
  return {
    kind: 'lines',
    id: 'stick-curves',
    part: 'my-hands',
    title: 'Rate against stick',
    x: { title: 'Stick', unit: '%', low: 0, high: 100, isLogarithmic: false },
    y: { title: 'Rate', unit: 'deg/s', low: 0, high: most, isLogarithmic: false },
    at: travel.map((share) => 100 * share),
    lines,
    strips: [],
  };
}

function lineOf(view: CraftView, axis: string): readonly Line[] {
  const points = view.curve(`stick.${axis}.curve`);
  const limit = view.quantity(`stick.${axis}.limit`) ?? Number.POSITIVE_INFINITY;
  if (points === null || points.length < 2) return [];
  if (!points.every(({ x }, index) => index === 0 || x > (points[index - 1]?.x ?? x))) return [];
  const curve = monotoneCurve(points);
  return [{ name: axis, values: travel.map((share) => degrees * Math.min(limit, curveValue(curve, share))) }];
}

/** One line for axes that are set alike: "roll and pitch". */
function sameTogether(lines: readonly Line[]): readonly Line[] {
  const byValues = new Map<string, Line[]>();
  for (const line of lines) {
    const values = line.values.join();
    byValues.set(values, [...(byValues.get(values) ?? []), line]);
  }
  return [...byValues.values()].flatMap(([first, ...others]) =>
    first === undefined ? [] : [{ ...first, name: [first, ...others].map(({ name }) => name).join(' and ') }],
  );
}
