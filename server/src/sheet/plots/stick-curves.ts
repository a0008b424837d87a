import type { CraftView } from '../../craft/view';
import { type AxisName, axisNames } from '../../figures/axis-names';
import { stickCurve } from '../../figures/stick-figures';
import { curveValue } from '../../physics/monotone-curve';
import { highestOf, type LinePlot, type PlotLine } from './plot';

/** Shares of the stick's travel from the middle to its end. */
const travel = Array.from({ length: 51 }, (_, step) => step / 50);
const degrees = 180 / Math.PI;

/** How fast the craft is asked to turn for each place of the sticks. */
export function stickCurves(view: CraftView): LinePlot | null {
  const lines = sameTogether(axisNames.flatMap((axis) => lineOf(view, axis)));
  if (lines.length === 0) return null;
  return {
    kind: 'lines',
    id: 'stick-curves',
    part: 'my-hands',
    title: 'Rate against stick',
    x: { title: 'Stick', unit: '%', low: 0, high: 100, isLogarithmic: false },
    y: { title: 'Rate', unit: 'deg/s', low: 0, high: highestOf(lines), isLogarithmic: false },
    at: travel.map((share) => 100 * share),
    lines,
    strips: [],
  };
}

function lineOf(view: CraftView, axis: AxisName): readonly PlotLine[] {
  const curve = stickCurve(view, axis);
  if (curve === null) return [];
  const limit = view.quantity(`stick.${axis}.limit`) ?? Number.POSITIVE_INFINITY;
  return [{ name: axis, values: travel.map((share) => degrees * Math.min(limit, curveValue(curve, share))) }];
}

/** One line for axes that are set alike: "roll and pitch". */
function sameTogether(lines: readonly PlotLine[]): readonly PlotLine[] {
  const byValues = new Map<string, PlotLine[]>();
  for (const line of lines) {
    const values = line.values.join();
    byValues.set(values, [...(byValues.get(values) ?? []), line]);
  }
  return [...byValues.values()].flatMap(([first, ...others]) =>
    first === undefined ? [] : [{ ...first, name: [first, ...others].map(({ name }) => name).join(' and ') }],
  );
}
