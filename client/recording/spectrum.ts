import type { Peak } from '../../server/src/lsp/recording-protocol';
import type { LinePlot, PlotAxis, Strip } from '../../server/src/sheet/plots/plot';
import { element } from '../page/element';
import { figureText, tickText } from '../sheet/plots/figure-text';
import { canvas, framed, shape, sized, words } from '../sheet/plots/frame';
import { pathThrough } from '../sheet/plots/paths';
import { readable } from '../sheet/plots/readable';
import { type AxisScale, scaleOf, ticksOf } from '../sheet/plots/scales';
import type { DrawnSpectrum, SpectrumLine } from './spectrum-data';
import { legendOf, nearest } from './spectrum-legend';
import { asTable } from './table';

/** Pixels. */
const height = 190;
const margin = { top: 10, right: 36, bottom: 20, left: 40 };
const stripHeight = 19;
/** Below it nothing shakes that a filter could take out: the craft flies. Hz. */
const lowest = 10;
const tableRows = 16;

/** How loud each frequency is, with the tones found in it, the script's filters, and where the motors' tones should be. */
export function spectrum(drawn: DrawnSpectrum): HTMLElement {
  const [first] = drawn.lines;
  if (first === undefined) return element('p', { class: 'aside' }, 'No spectrum is there to draw.');
  const axes = axesOf(drawn);
  const legend = legendOf(drawn);
  const at = first.frequencies.filter((one) => one >= axes.x.low && one <= axes.x.high);
  const frame = readable({
    id: drawn.id,
    label: `${drawn.title}. Frequency in Hz, loudness in dB.`,
    count: at.length,
    describe: (index) => legend.read(index === null ? null : (at[index] ?? null)),
    indexAt: (x, width) => nearest(at, xScale(axes.x, width).invert(x)),
    placeOf: (index, width) => xScale(axes.x, width)(at[index] ?? axes.x.low),
    drawn: sized((width) => drawnAt(drawn, axes, width)),
  });
  return framed({ title: drawn.title, beside: legend.element }, frame, tableOf(drawn, at));
}

interface Axes {
  readonly x: PlotAxis;
  readonly y: PlotAxis;
}

function axesOf({ lines }: DrawnSpectrum): Axes {
  const shown = lines.flatMap(({ frequencies, decibels }) =>
    decibels.filter((one, at) => Number.isFinite(one) && (frequencies[at] ?? 0) >= lowest),
  );
  const highest = Math.max(2 * lowest, ...lines.map(({ frequencies }) => frequencies.at(-1) ?? 0));
  const step = 10;
  const high = step * Math.ceil(most(shown, Math.max) / step);
  // Far below the loudest nothing is worth the room that it would take.
  const low = Math.max(
    high - 8 * step,
    Math.min(high - step, step * Math.floor(most(shown, Math.min) / step)),
  );
  return {
    x: { title: 'Frequency', unit: 'Hz', low: lowest, high: highest, isLogarithmic: true },
    y: { title: 'Loudness', unit: 'dB', low, high, isLogarithmic: false },
  };
}

/** Of very many values: a call takes only so many arguments. */
function most(values: readonly number[], which: (one: number, other: number) => number): number {
  return values.length === 0 ? 0 : values.reduce((one, other) => which(one, other));
}

function xScale(x: PlotAxis, width: number): AxisScale {
  return scaleOf(x, margin.left, width - margin.right);
}

function drawnAt(drawn: DrawnSpectrum, axes: Axes, width: number): SVGElement {
  const x = xScale(axes.x, width);
  const y = scaleOf(axes.y, height - margin.bottom, margin.top);
  const strips = stripsOf(drawn, axes.x);
  return canvas(
    width,
    height + strips.length * stripHeight,
    ...grid(axes, x, y, width),
    ...filtersDrawn(drawn.filters, axes.x, x, width),
    ...drawn.lines.map((line, index) => curve(line, axes.x, x, y, index)),
    ...drawn.lines.flatMap((line) =>
      line.peaks.flatMap((peak, at) => peakMark(peak, at, line, axes.x, { x, y })),
    ),
    ...strips.flatMap((strip, index) => stripDrawn(strip, index, x, width)),
  );
}

function grid(axes: Axes, x: AxisScale, y: AxisScale, width: number): readonly SVGElement[] {
  const room = width - margin.right - 18;
  return [
    ...ticksOf(axes.y, 5).flatMap((value) => [
      shape('line', { class: 'rule', x1: margin.left, x2: width - margin.right, y1: y(value), y2: y(value) }),
      words(tickText(value), { class: 'tick', x: margin.left - 5, y: y(value) + 4, 'text-anchor': 'end' }),
    ]),
    ...ticksOf(axes.x, width < 380 ? 4 : 8)
      .filter((value) => x(value) < room)
      .map((value) =>
        words(tickText(value), { class: 'tick', x: x(value), y: height - 4, 'text-anchor': 'middle' }),
      ),
    words('Hz', { class: 'tick', x: width - margin.right, y: height - 4, 'text-anchor': 'end' }),
  ];
}

function curve(
  { frequencies, decibels }: SpectrumLine,
  axis: PlotAxis,
  x: AxisScale,
  y: AxisScale,
  index: number,
): SVGElement {
  const points = decibels.map((value, at) => {
    const frequency = frequencies[at] ?? 0;
    return Number.isFinite(value) && isWithin(axis, frequency) ? ([x(frequency), y(value)] as const) : null;
  });
  return shape('path', { class: `curve curve-${index % 4}`, d: pathThrough(points) });
}

/** From above, on the scale at the right: 0 dB at the top. */
function filtersDrawn(
  plot: LinePlot | null,
  axis: PlotAxis,
  x: AxisScale,
  width: number,
): readonly SVGElement[] {
  if (plot === null) return [];
  const y = scaleOf(plot.y, height - margin.bottom, margin.top);
  const path = (values: LinePlot['lines'][number]['values']) =>
    pathThrough(
      values.map((value, at) => {
        const frequency = plot.at[at] ?? 0;
        return value !== null && isWithin(axis, frequency) ? [x(frequency), y(value)] : null;
      }),
    );
  return [
    ...plot.lines.map(({ values }) => shape('path', { class: 'filter', d: path(values) })),
    ...ticksOf(plot.y, 3).map((value) =>
      words(tickText(value), { class: 'tick', x: width - margin.right + 5, y: y(value) + 4 }),
    ),
  ];
}

/** A tone that rows so seldom fold down stands elsewhere than it is: it is told below, and not marked. */
function peakMark(
  { frequency }: Peak,
  index: number,
  line: SpectrumLine,
  axis: PlotAxis,
  { x, y }: { readonly x: AxisScale; readonly y: AxisScale },
): readonly SVGElement[] {
  if (!isWithin(axis, frequency.likely)) return [];
  const at = nearest(line.frequencies, frequency.likely);
  const place = { cx: x(frequency.likely), cy: y(line.decibels[at] ?? 0) };
  const label = {
    class: 'named',
    x: place.cx,
    y: Math.max(margin.top, place.cy - 7),
    'text-anchor': 'middle',
  };
  return [shape('circle', { class: 'peak', r: 3.5, ...place }), words(String(index + 1), label)];
}

/** Where the script expects the motors' tones, as far as the recording can tell them. */
function stripsOf({ filters }: DrawnSpectrum, axis: PlotAxis): readonly Strip[] {
  return (filters?.strips ?? []).filter(({ low, high }) => low < axis.high && high > axis.low);
}

function stripDrawn(
  { name, low, likely, high }: Strip,
  index: number,
  x: AxisScale,
  width: number,
): readonly SVGElement[] {
  const top = height + index * stripHeight;
  const [from, to] = [x(low), Math.max(x(low) + 2, x(high))];
  const isRight = from > width * 0.6;
  const anchor = isRight ? 'end' : 'start';
  return [
    words(name, { class: 'tick', x: isRight ? to : from, y: top + 9, 'text-anchor': anchor }),
    shape('rect', { class: 'strip', x: from, y: top + 12, width: to - from, height: 4 }),
    ...(likely === null
      ? []
      : [shape('rect', { class: 'likely', x: x(likely) - 1, y: top + 10, width: 2, height: 8 })]),
  ];
}

function tableOf({ title, lines }: DrawnSpectrum, at: readonly number[]): HTMLElement {
  const steps = Math.min(tableRows, at.length);
  const places = Array.from({ length: steps }, (_, step) =>
    Math.round((step * (at.length - 1)) / Math.max(1, steps - 1)),
  );
  const rows = places.map((place) => {
    const frequency = at[place] ?? 0;
    return [
      figureText(frequency, 'Hz'),
      ...lines.map(({ frequencies, decibels }) =>
        figureText(decibels[nearest(frequencies, frequency)] ?? null, 'dB'),
      ),
    ];
  });
  return asTable(title, ['Frequency', ...lines.map(({ name }) => name)], rows);
}

function isWithin({ low, high }: PlotAxis, value: number): boolean {
  return value >= low && value <= high;
}
