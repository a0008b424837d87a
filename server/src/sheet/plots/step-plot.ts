import type { CraftView } from '../../craft/view';
import { axisNames, axisOf } from '../../figures/axis';
import { stepOf, watched } from '../../figures/loop-figures';
import { highestOf, type LinePlot, type PlotLine } from './plot';

const samples = 126;

/** How each axis answers a sudden call for a turning rate. */
export function stepPlot(view: CraftView): LinePlot | null {
  const times = Array.from({ length: samples }, (_, step) => (watched * step) / (samples - 1));
  const lines = axisNames.flatMap((name): readonly PlotLine[] => {
    const axis = axisOf(view, name)?.value.likely;
    const response = axis === undefined ? null : stepOf(axis, view, watched);
    if (response === null) return [];
    const { values, interval } = response;
    return [
      {
        name,
        values: times.map((time) => 100 * (values[Math.round(time / interval)] ?? values.at(-1) ?? 0)),
      },
    ];
  });
  if (lines.length === 0) return null;
  return {
    kind: 'lines',
    id: 'step',
    part: 'how-late',
    title: 'How the craft follows a sudden stick movement',
    x: { title: 'Time', unit: 'ms', low: 0, high: 1e3 * watched, isLogarithmic: false },
    y: {
      title: 'Share of what was asked for',
      unit: '%',
      low: 0,
      high: Math.max(120, highestOf(lines)),
      isLogarithmic: false,
    },
    at: times.map((time) => 1e3 * time),
    lines,
    strips: [],
  };
}
