import { CraftView } from '../../craft/view';
import { type Chains, chainsOf } from '../../figures/filter-chain';
import { chainDecibels } from '../../figures/filter-figures';
import { figureOf } from '../../figures/index';
import { turnsAt } from '../../figures/turning';
import type { DigitalFilter } from '../../physics/filter';
import { halfRate } from '../../physics/sampling';
import { type LinePlot, namedFor, type PlotLine, type Strip } from './plot';

const lowest = 10;
const samples = 320;
/** dB: what is left of a tone below this is gone. */
const floor = -60;

/** What the filters leave of each frequency, above the tones that each pack makes. */
export function filterPlot(view: CraftView): LinePlot | null {
  return plotOf(view, linesOf);
}

/** The same of the gyro's filters alone, with the tones of the pack in view: to be held against what was measured. */
export function gyroFilterPlot(view: CraftView): LinePlot | null {
  const plot = plotOf(view, gyroLines);
  return plot === null ? null : { ...plot, strips: tonesOf(view, plot.x.high) };
}

function plotOf(
  view: CraftView,
  filtered: (view: CraftView, chains: Chains) => readonly Filtered[],
): LinePlot | null {
  const rate = view.quantity('gyro.rate');
  const chains = chainsOf(view);
  if (rate === null || chains === null || halfRate(rate) <= 2 * lowest) return null;
  const highest = halfRate(rate);
  const at = Array.from(
    { length: samples },
    (_, step) => lowest * (highest / lowest) ** (step / (samples - 1)),
  );
  const lines = filtered(view, chains.value).map(({ name, filters }): PlotLine => {
    const values = at.map((frequency) => Math.max(2 * floor, chainDecibels(filters, frequency)));
    return { name, values };
  });
  return {
    kind: 'lines',
    id: 'filters',
    part: 'how-late',
    title: 'What the filters leave',
    x: { title: 'Frequency', unit: 'Hz', low: lowest, high: highest, isLogarithmic: true },
    y: { title: 'Left', unit: 'dB', low: floor, high: 0, isLogarithmic: false },
    at,
    lines,
    strips: view.craft.packsOrNone().flatMap((pack) => tonesOf(new CraftView(view.craft, pack), highest)),
  };
}

interface Filtered {
  readonly name: string;
  readonly filters: readonly DigitalFilter[];
}

/** Notches that follow the motors stand elsewhere at full throttle than in the hover. */
function gyroLines(view: CraftView, { hover, gyro }: Chains): readonly Filtered[] {
  const full = hover === null ? null : (turnsAt(view, 'full')?.likely ?? null);
  const filters = hover === null ? gyro.all(null) : gyro.own(hover);
  return [
    { name: full === null ? 'gyro' : 'gyro, in the hover', filters },
    ...(full === null ? [] : [{ name: 'gyro, at full throttle', filters: gyro.own(full) }]),
  ];
}

function linesOf(view: CraftView, chains: Chains): readonly Filtered[] {
  const { hover } = chains;
  const derivative = hover === null ? chains.derivative?.all(null) : chains.derivative?.own(hover);
  const gyro = gyroLines(view, chains);
  return [
    ...gyro,
    ...(derivative === undefined || derivative.length === 0
      ? []
      : [{ name: 'derivative, in the hover', filters: [...(gyro[0]?.filters ?? []), ...derivative] }]),
  ];
}

/** Motor and blade tones of a pack, from idle to full throttle, as far as the gyro can tell them. */
function tonesOf(view: CraftView, highest: number): readonly Strip[] {
  const blades = view.count('prop.blades');
  const [idle, hover, full] = ['idle-tone', 'hover-tone', 'full-tone'].map((id) => figureOf(view, id));
  if (!idle || !full) return [];
  const strip = (name: string, times: number): Strip => ({
    name: namedFor(view.pack, name),
    low: times * idle.likely,
    likely: hover ? times * hover.likely : null,
    high: Math.min(highest, times * full.likely),
  });
  const strips = [strip('motors', 1), ...(blades === null ? [] : [strip('blades', blades)])];
  return strips.filter(({ low, high }) => low < high);
}
