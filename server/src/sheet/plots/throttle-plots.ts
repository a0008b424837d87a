import { CraftView } from '../../craft/view';
import { carriedBy, carriedOnFull } from '../../figures/drive';
import { figureOf } from '../../figures/index';
import { model } from '../../figures/model';
import { type DriveState, stateAtThrottle } from '../../physics/drive';
import { highestOf, type LinePlot, namedFor, type PlotLine, type Strip } from './plot';

/** Shares of throttle. */
const throttles = Array.from({ length: 41 }, (_, step) => step / 40);

interface Sweep {
  readonly name: string;
  /** N */
  readonly weight: number;
  /** One for each throttle; null beyond what the script lets through. */
  readonly states: readonly (DriveState | null)[];
  readonly count: number;
}

/** Thrust and current along the throttle, a line for each pack: thrust as in most of a flight, current at its most. */
export function throttlePlots(view: CraftView): readonly LinePlot[] {
  const views = view.craft.packsOrNone().map((pack) => new CraftView(view.craft, pack));
  const sweeps = views.flatMap((one) => sweepOf(one, 'half-used')?.value ?? []);
  const most = views.flatMap((one) => sweepOf(one, 'full')?.value ?? []);
  if (sweeps.length === 0) return [];
  const hovers = views.flatMap(hoverOf);
  const thrust = sweeps.map(({ name, states, weight, count }) => ({
    name,
    values: states.map((state) => (state === null ? null : (count * state.thrust) / weight)),
  }));
  const current = most.map(({ name, states }) => ({
    name,
    values: states.map((state) => state?.packCurrent ?? null),
  }));
  return [
    plot(
      {
        id: 'thrust',
        title: 'Thrust-to-weight along the throttle, pack half used',
        y: 'Thrust-to-weight',
        unit: '',
      },
      thrust,
      hovers,
    ),
    plot(
      { id: 'current', title: 'Current along the throttle, full pack', y: 'Current', unit: 'A' },
      current,
      [],
    ),
  ];
}

const sweepOf = model<[pack: 'half-used' | 'full'], Sweep>('sweep', (own, pack) => {
  const carried = (pack === 'full' ? carriedOnFull : carriedBy)(own)?.value.likely;
  if (carried === undefined) return null;
  const { drive, weight, throttle: script } = carried;
  const states = throttles.map((asked) => {
    const output = script === null ? asked : script.told(asked);
    return output === null ? null : stateAtThrottle(drive, output);
  });
  return { value: { name: own.pack ?? 'all', weight, states, count: drive.count } };
});

function hoverOf(view: CraftView): readonly Strip[] {
  const hover = figureOf(view, 'hover-throttle');
  if (hover === null) return [];
  return [
    {
      name: namedFor(view.pack, 'hover'),
      low: hover.low,
      likely: hover.likely,
      high: Math.min(100, hover.high),
    },
  ];
}

interface NamedCurve {
  readonly id: string;
  readonly title: string;
  readonly y: string;
  readonly unit: string;
}

function plot(
  { id, title, y, unit }: NamedCurve,
  lines: readonly PlotLine[],
  strips: readonly Strip[],
): LinePlot {
  return {
    kind: 'lines',
    id,
    part: 'which-pack',
    title,
    x: { title: 'Throttle', unit: '%', low: 0, high: 100, isLogarithmic: false },
    y: { title: y, unit, low: 0, high: highestOf(lines), isLogarithmic: false },
    at: throttles.map((throttle) => 100 * throttle),
    lines,
    strips,
  };
}
