import { CraftView } from '../../craft/view';
import { forwardOf, powerAt } from '../../figures/airframe';
import { figureOf } from '../../figures/index';
import { model } from '../../figures/model';
import { highestOf, type LinePlot, namedFor, type PlotLine, type Strip } from './plot';

const samples = 61;
/** m/s: the axis ends at a multiple of this. */
const step = 5;

/** Power along the airspeed, a line for each pack, with the speeds for time and for way. */
export function flightPlot(view: CraftView): LinePlot | null {
  const views = view.craft.packsOrNone().map((pack) => new CraftView(view.craft, pack));
  const tops = views.flatMap((one) => figureOf(one, 'top-speed')?.likely ?? []);
  if (tops.length === 0) return null;
  const end = step * Math.ceil(Math.max(...tops) / step);
  const lines = views.flatMap((one) => sweepOf(one, end)?.value ?? []);
  return {
    kind: 'lines',
    id: 'flight',
    part: 'which-pack',
    title: 'Power along the airspeed in level flight, pack half used',
    x: { title: 'Airspeed', unit: 'm/s', low: 0, high: end, isLogarithmic: false },
    y: { title: 'Power from the pack', unit: 'W', low: 0, high: highestOf(lines), isLogarithmic: false },
    at: speedsTo(end),
    lines,
    strips: views.flatMap(speedsOf),
  };
}

function speedsTo(end: number): readonly number[] {
  return Array.from({ length: samples }, (_, index) => (index * end) / (samples - 1));
}

const sweepOf = model<[end: number], PlotLine>('power along the airspeed', (own, end) => {
  const forward = forwardOf(own)?.value.likely;
  if (forward === undefined) return null;
  const values = speedsTo(end).map((speed) => {
    const power = powerAt(forward, speed);
    return Number.isFinite(power) ? power : null;
  });
  return { value: { name: own.pack ?? 'all', values } };
});

function speedsOf(view: CraftView): readonly Strip[] {
  return (
    [
      ['endurance-speed', 'longest'],
      ['range-speed', 'farthest'],
    ] as const
  ).flatMap(([id, name]) => {
    const speed = figureOf(view, id);
    if (speed === null) return [];
    const { low, likely, high } = speed;
    return [{ name: namedFor(view.pack, name), low, likely, high }];
  });
}
