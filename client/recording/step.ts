import type { MeasuredSpan, StepCurve } from '../../server/src/lsp/recording-protocol';
import type { PlotAxis } from '../../server/src/sheet/plots/plot';
import type { ModelStep } from '../../server/src/sheet/recording-model';
import { element } from '../page/element';
import { figureText } from '../sheet/plots/figure-text';
import { canvas, framed, shape, sized, words } from '../sheet/plots/frame';
import { readable } from '../sheet/plots/readable';
import { type AxisScale, scaleOf, ticksOf } from '../sheet/plots/scales';
import { likelyText } from './measured-text';
import { along, curvePath, type Panel, panelScale, rules } from './panel';
import { nearest } from './spectrum-legend';
import { asTable } from './table';

/** Pixels. */
const margin = { top: 12, right: 60, bottom: 20, left: 40 };
const height = 190;
const tableRows = 12;

export interface DrawnStep {
  readonly id: string;
  readonly title: string;
  readonly lines: readonly { readonly name: string; readonly step: StepCurve }[];
  readonly model: { readonly name: string; readonly step: ModelStep } | null;
}

/** What comes of a sudden call, over time; where it ends stands at the right, for the slow turns tell it. */
export function stepDrawing(drawn: DrawnStep): HTMLElement {
  const [first] = drawn.lines;
  if (first === undefined) return element('p', { class: 'aside' }, 'No step is there to draw.');
  const at = first.step.seconds.map((time) => 1e3 * time);
  const lines = linesOf(drawn);
  const axis: PlotAxis = { title: 'Time', unit: 'ms', low: 0, high: at.at(-1) ?? 1, isLogarithmic: false };
  const legend = legendOf(lines);
  const frame = readable({
    id: drawn.id,
    label: `${drawn.title}. Time in ms, share of what was asked for in percent.`,
    count: at.length,
    describe: (index) => legend.read(index === null ? null : (at[index] ?? null)),
    indexAt: (x, width) => nearest(at, xScale(axis, width).invert(x)),
    placeOf: (index, width) => xScale(axis, width)(at[index] ?? 0),
    drawn: sized((width) => drawnAt(drawn, lines, axis, width)),
  });
  return framed({ title: drawn.title, beside: legend.element }, frame, tableOf(drawn, lines, at));
}

interface StepLine {
  readonly name: string;
  readonly style: string;
  /** ms */
  readonly at: readonly number[];
  /** % */
  readonly values: readonly number[];
}

function linesOf({ lines, model }: DrawnStep): readonly StepLine[] {
  const line = (name: string, style: string, { seconds, share }: ModelStep): StepLine => ({
    name,
    style,
    at: seconds.map((time) => 1e3 * time),
    values: share.map((one) => 100 * one),
  });
  return [
    ...lines.map(({ name, step }, index) => line(name, `curve curve-${index % 4}`, step)),
    ...(model === null ? [] : [line(model.name, 'filter', model.step)]),
  ];
}

function xScale(x: PlotAxis, width: number): AxisScale {
  return scaleOf(x, margin.left, width - margin.right);
}

function drawnAt(drawn: DrawnStep, lines: readonly StepLine[], axis: PlotAxis, width: number): SVGElement {
  const x = xScale(axis, width);
  const shown = lines.flatMap(({ at, values }) => values.filter((_, index) => (at[index] ?? 0) <= axis.high));
  const ends = drawn.lines.map(({ step }) => step.endGain);
  const panel: Panel = {
    axis: {
      title: 'Share',
      unit: '%',
      // A little below nothing is not worth a line.
      low: Math.min(0, 20 * Math.round(Math.min(...shown) / 20)),
      high: Math.max(120, 20 * Math.ceil(Math.max(...shown, ...ends.map(({ likely }) => likely)) / 20)),
      isLogarithmic: false,
    },
    top: margin.top,
    bottom: height - margin.bottom,
  };
  const y = panelScale(panel);
  const sides = { left: margin.left, right: width - margin.right };
  return canvas(
    width,
    height,
    ...rules(panel, ticksOf(panel.axis, 5), sides),
    shape('line', { class: 'whole-call', x1: sides.left, x2: sides.right, y1: y(100), y2: y(100) }),
    ...along(axis, x, panel.bottom, sides),
    ...ends.flatMap((end, index) => endDrawn(end, index, y, sides.right)),
    ...[...lines]
      .reverse()
      .map(({ style, at, values }) => shape('path', { class: style, d: curvePath(at, values, x, y) })),
  );
}

/** Where it ends, apart: a bar from low to high behind the curve. */
function endDrawn(end: MeasuredSpan, index: number, y: AxisScale, right: number): readonly SVGElement[] {
  const left = right + 4 + 9 * index;
  const top = y(end.high);
  const mark = { x: left, y: top, width: 4, height: Math.max(2, y(end.low) - top) };
  return [
    shape('rect', { class: `end end-${index % 4}`, ...mark }),
    shape('line', {
      class: `curve curve-${index % 4}`,
      x1: left - 2,
      x2: left + 6,
      y1: y(end.likely),
      y2: y(end.likely),
    }),
    ...(index === 0 ? [words('end', { class: 'tick', x: right + 24, y: y(end.likely) + 4 })] : []),
  ];
}

function legendOf(lines: readonly StepLine[]) {
  const place = element('span', { class: 'read' });
  const entries = lines.map((line) => ({ ...line, value: element('span', { class: 'read' }) }));
  const textAt = ({ at, values }: StepLine, time: number) =>
    figureText(values[nearest(at, time)] ?? null, '%');
  const rows = entries.map(({ name, style, value }) =>
    element('li', {}, canvas(18, 8, shape('path', { class: style, d: 'M0 4H18' })), name, ' ', value),
  );
  return {
    element: element('ul', { class: 'legend' }, ...rows, element('li', {}, place)),
    read(time: number | null): string {
      place.textContent = time === null ? '' : `at ${figureText(time, 'ms')}`;
      for (const { value, ...line } of entries) value.textContent = time === null ? '' : textAt(line, time);
      if (time === null) return '';
      return `${figureText(time, 'ms')}: ${entries.map((line) => `${line.name} ${textAt(line, time)}`).join(', ')}`;
    },
  };
}

function tableOf(
  { title, lines: measured }: DrawnStep,
  lines: readonly StepLine[],
  at: readonly number[],
): HTMLElement {
  const steps = Math.min(tableRows, at.length);
  const shown = [
    ...new Set(
      Array.from({ length: steps }, (_, step) =>
        Math.round((step * (at.length - 1)) / Math.max(1, steps - 1)),
      ),
    ),
  ];
  const rows = shown.map((place) => {
    const time = at[place] ?? 0;
    return [
      figureText(time, 'ms'),
      ...lines.map((line) => figureText(line.values[nearest(line.at, time)] ?? null, '%')),
    ];
  });
  const ends = ['where it ends', ...measured.map(({ step }) => likelyText(step.endGain))];
  return asTable(
    title,
    ['Time', ...lines.map(({ name }) => name)],
    [...rows, [...ends, ...lines.slice(measured.length).map(() => '–')]],
  );
}
