import type { CraftView } from '../../craft/view';
import { axisNames } from '../../figures/axis-names';
import { stickStepOf } from '../../figures/stick-step';
import type { StepResponse } from '../../physics/step-response';
import { highestOf, type LinePlot } from './plot';

const samples = 126;
/** s: what is drawn at the least and at the most, in steps of the least. */
const drawn = { least: 0.25, most: 1 };

/** How each axis answers a sudden call for a turning rate, until it has settled; one that swings has no answer. */
export function stepPlot(view: CraftView): LinePlot | null {
  const answers = axisNames.flatMap((name) => {
    const step = stickStepOf(view, name);
    return step === null ? [] : [{ name, response: step.value.likely }];
  });
  if (answers.length === 0) return null;
  const longest = Math.max(...answers.map(({ response }) => response.values.length * response.interval));
  const length = Math.min(drawn.most, drawn.least * Math.ceil(longest / drawn.least));
  const times = Array.from({ length: samples }, (_, step) => (length * step) / (samples - 1));
  const lines = answers.map(({ name, response }) => ({
    name,
    values: times.map((time) => 100 * valueAt(response, time)),
  }));
  return {
    kind: 'lines',
    id: 'step',
    part: 'how-late',
    title: 'How the craft follows a sudden stick movement where it comes nearest to swinging',
    x: { title: 'Time', unit: 'ms', low: 0, high: 1e3 * length, isLogarithmic: false },
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

/** Between two of the simulated moments, in proportion; settled behind the last. */
function valueAt({ values, interval }: StepResponse, time: number): number {
  const place = time / interval;
  const before = Math.floor(place);
  const [one, other] = [values[before], values[before + 1]];
  if (one === undefined || other === undefined) return values.at(-1) ?? 0;
  return one + (place - before) * (other - one);
}
