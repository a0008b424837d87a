import type { LinePlot, PlotLine } from '../../../server/src/sheet/plots/plot';
import { element } from '../../page/element';
import { asTable } from './as-table';
import { figureText, tickText } from './figure-text';
import { canvas, framed, shape, sized, words } from './frame';
import { pathThrough } from './paths';
import { readable } from './readable';
import { type AxisScale, scaleOf, ticksOf } from './scales';

/** Pixels. */
const height = 150;
const margin = { top: 8, right: 6, bottom: 20, left: 40 };
const stripHeight = 19;
/** Rows of the table. */
const tableRows = 11;

/** Curves with their legend, which reads values off where the pointer is or the arrow keys lead. */
export function linePlot(plot: LinePlot): HTMLElement {
  const legend = legendOf(plot);
  const label = `${plot.title}. ${plot.x.title} in ${plot.x.unit}, ${plot.y.title.toLowerCase()}${inUnit(plot)}.`;
  const frame = readable({
    id: plot.id,
    label,
    count: plot.at.length,
    describe: (index) => {
      legend.read(index);
      return index === null ? '' : readingOf(plot, index);
    },
    indexAt: (x, width) => nearest(plot.at, xScale(plot, width).invert(x)),
    placeOf: (index, width) => xScale(plot, width)(plot.at[index] ?? 0),
    drawn: sized((width) => drawn(plot, width)),
  });
  return framed({ title: titleOf(plot), beside: legend.element }, frame, tableOf(plot));
}

function xScale({ x }: LinePlot, width: number): AxisScale {
  return scaleOf(x, margin.left, width - margin.right);
}

function drawn(plot: LinePlot, width: number): SVGElement {
  const x = xScale(plot, width);
  const y = scaleOf(plot.y, height - margin.bottom, margin.top);
  const whole = height + plot.strips.length * stripHeight;
  return canvas(
    width,
    whole,
    ...yAxis(plot, y, width),
    ...xAxis(plot, x, width),
    ...curves(plot, x, y),
    ...strips(plot, x, width),
  );
}

function yAxis({ y: axis }: LinePlot, y: AxisScale, width: number): readonly SVGElement[] {
  return ticksOf(axis, 4).flatMap((value) => [
    shape('line', { class: 'rule', x1: margin.left, x2: width - margin.right, y1: y(value), y2: y(value) }),
    words(tickText(value), { class: 'tick', x: margin.left - 5, y: y(value) + 4, 'text-anchor': 'end' }),
  ]);
}

function xAxis({ x: axis }: LinePlot, x: AxisScale, width: number): readonly SVGElement[] {
  const unit = words(axis.unit, {
    class: 'tick',
    x: width - margin.right,
    y: height - 4,
    'text-anchor': 'end',
  });
  const room = width - margin.right - 34;
  const ticks = ticksOf(axis, width < 380 ? 4 : 8).filter((value) => x(value) < room);
  return [
    ...ticks.map((value) =>
      words(tickText(value), { class: 'tick', x: x(value), y: height - 4, 'text-anchor': 'middle' }),
    ),
    unit,
  ];
}

function curves({ at, lines }: LinePlot, x: AxisScale, y: AxisScale): readonly SVGElement[] {
  return lines.map(({ values }, index) => {
    const points = values.map((value, place) =>
      value === null ? null : ([x(at[place] ?? 0), y(value)] as const),
    );
    return shape('path', { class: `curve curve-${index % 4}`, d: pathThrough(points) });
  });
}

/** Below the axis, each with its name above it. */
function strips({ strips: all }: LinePlot, x: AxisScale, width: number): readonly SVGElement[] {
  return all.flatMap(({ name, low, likely, high }, index) => {
    const top = height + index * stripHeight;
    const [from, to] = [x(low), Math.max(x(low) + 2, x(high))];
    const isRight = from > width * 0.6;
    const label = {
      class: 'tick',
      x: isRight ? to : from,
      y: top + 9,
      'text-anchor': isRight ? 'end' : 'start',
    };
    const bar = { class: 'strip', x: from, y: top + 12, width: to - from, height: 4 };
    const mark =
      likely === null
        ? []
        : [shape('rect', { class: 'likely', x: x(likely) - 1, y: top + 10, width: 2, height: 8 })];
    return [words(name, label), shape('rect', bar), ...mark];
  });
}

/** Names of the lines with a piece of each, and room for a value read off. */
function legendOf({ lines, y, at, x }: LinePlot) {
  const place = element('span', { class: 'read' });
  const values = lines.map(() => element('span', { class: 'read' }));
  const rows = lines.map(({ name }, index) => {
    const piece = canvas(18, 8, shape('path', { class: `curve curve-${index % 4}`, d: 'M0 4H18' }));
    return element('li', {}, piece, name, ' ', values[index] ?? '');
  });
  return {
    element: element('ul', { class: 'legend' }, ...rows, element('li', {}, place)),
    read(index: number | null): void {
      place.textContent = index === null ? '' : `at ${figureText(at[index] ?? null, x.unit)}`;
      for (const [which, line] of lines.entries()) {
        const value = values[which];
        if (value !== undefined) value.textContent = index === null ? '' : valueAt(line, index, y.unit);
      }
    },
  };
}

function readingOf({ at, x, y, lines }: LinePlot, index: number): string {
  const read = lines.map((line) => `${line.name} ${valueAt(line, index, y.unit)}`);
  return `${x.title} ${figureText(at[index] ?? null, x.unit)}: ${read.join(', ')}`;
}

function valueAt({ values }: PlotLine, index: number, unit: string): string {
  return figureText(values[index] ?? null, unit);
}

function nearest(at: readonly number[], value: number): number {
  const after = at.findIndex((one) => one >= value);
  if (after < 0) return at.length - 1;
  const before = Math.max(0, after - 1);
  return value - (at[before] ?? 0) < (at[after] ?? 0) - value ? before : after;
}

function tableOf(plot: LinePlot): HTMLElement {
  const { id, title, x, y, at, lines, strips: all } = plot;
  const head = [
    `${x.title}, ${x.unit}`,
    ...lines.map(({ name }) => (y.unit === '' ? name : `${name}, ${y.unit}`)),
  ];
  // The axis may reach farther than any line does, as far as a strip.
  const ends = lines.map(({ values }) => values.findLastIndex((value) => value !== null));
  const last = Math.max(0, ...ends);
  const steps = Math.min(tableRows - 1, last);
  const places = Array.from({ length: steps + 1 }, (_, step) =>
    Math.round((step * last) / Math.max(1, steps)),
  );
  const rows = places.map((place) => [
    figureText(at[place] ?? null, ''),
    ...lines.map((line) => valueAt(line, place, '')),
  ]);
  const spans = all.map(({ name, low, likely, high }) => {
    const mostly = likely === null ? '' : `, mostly ${figureText(likely, x.unit)}`;
    return [name, `${figureText(low, '')} to ${figureText(high, x.unit)}${mostly}`];
  });
  return asTable(id, title, head, [...rows, ...spans]);
}

function titleOf({ title, y }: LinePlot): string {
  return y.unit === '' ? title : `${title}, ${y.unit}`;
}

function inUnit({ y }: LinePlot): string {
  return y.unit === '' ? '' : ` in ${y.unit}`;
}
