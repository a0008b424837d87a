import type { ResponseCurve } from '../../server/src/lsp/recording-protocol';
import type { PlotAxis } from '../../server/src/sheet/plots/plot';
import { element } from '../page/element';
import { figureText } from '../sheet/plots/figure-text';
import { canvas, framed, shape, sized, words } from '../sheet/plots/frame';
import { areaBetween } from '../sheet/plots/paths';
import { readable } from '../sheet/plots/readable';
import { type AxisScale, scaleOf, ticksOf } from '../sheet/plots/scales';
import { along, curvePath, type Panel, type PanelSides, panelScale, rules, stepsOf } from './panel';
import { type DrawnResponse, halfTurnAt, type ResponseLine, sureFrom } from './response-data';
import { responseLegend } from './response-legend';
import { nearest } from './spectrum-legend';
import { asTable } from './table';

/** Pixels. */
const margin = { left: 40, right: 8 };
const places = { gain: [16, 128], phase: [148, 260], coherence: [280, 314] } as const;
const height = 334;
const tableRows = 14;

/** How much of a sine comes, and how late, over how often it is asked for; what the script lets expect over it. */
export function response(drawn: DrawnResponse): HTMLElement {
  const [first] = drawn.lines;
  if (first === undefined) return element('p', { class: 'aside' }, 'No response is there to draw.');
  const panels = panelsOf(drawn);
  const legend = responseLegend(drawn);
  const at = first.curve.frequencies;
  const frame = readable({
    id: drawn.id,
    label: `${drawn.title}. Frequency in Hz; gain in dB, phase in degrees, coherence.`,
    count: at.length,
    describe: (index) => legend.read(index === null ? null : (at[index] ?? null)),
    indexAt: (x, width) => nearest(at, xScale(panels.x, width).invert(x)),
    placeOf: (index, width) => xScale(panels.x, width)(at[index] ?? panels.x.low),
    drawn: sized((width) => drawnAt(drawn, panels, width)),
  });
  return framed({ title: drawn.title, beside: legend.element }, frame, tableOf(drawn, at));
}

interface Panels {
  readonly x: PlotAxis;
  readonly gain: Panel;
  readonly phase: Panel;
  readonly coherence: Panel;
}

function panelsOf({ lines, model }: DrawnResponse): Panels {
  const curves = lines.map(({ curve }) => curve);
  const all = (of: (curve: ResponseCurve) => readonly number[]) => curves.flatMap(of).filter(Number.isFinite);
  const frequencies = all((curve) => curve.frequencies);
  const low = Math.max(0.1, Math.min(...frequencies));
  const high = Math.max(2 * low, ...frequencies);
  const shown = (values: readonly number[] = []) =>
    values.filter((_, at) => isWithin(model?.curve.frequencies[at] ?? 0, low, high));
  const gains = [...all((curve) => curve.gain), ...shown(model?.curve.gain)];
  const phases = [...all((curve) => curve.phase), ...shown(model?.curve.phase)];
  const panel = (name: keyof typeof places, axis: Omit<PlotAxis, 'isLogarithmic'>): Panel => ({
    axis: { ...axis, isLogarithmic: false },
    top: places[name][0],
    bottom: places[name][1],
  });
  return {
    x: { title: 'Frequency', unit: 'Hz', low, high, isLogarithmic: true },
    gain: panel('gain', {
      title: 'Gain',
      unit: 'dB',
      low: bounded(10 * Math.floor(Math.min(...gains) / 10), -40, -10),
      high: bounded(5 * Math.ceil(Math.max(...gains) / 5), 5, 20),
    }),
    phase: panel('phase', {
      title: 'Phase',
      unit: 'deg',
      low: bounded(90 * Math.floor(Math.min(...phases) / 90), -450, -180),
      high: bounded(45 * Math.ceil(Math.max(...phases) / 45), 0, 90),
    }),
    coherence: panel('coherence', { title: 'Coherence', unit: '', low: 0, high: 1 }),
  };
}

function bounded(value: number, low: number, high: number): number {
  return Math.min(high, Math.max(low, value));
}

function isWithin(value: number, low: number, high: number): boolean {
  return value >= low && value <= high;
}

function xScale(x: PlotAxis, width: number): AxisScale {
  return scaleOf(x, margin.left, width - margin.right);
}

function drawnAt(drawn: DrawnResponse, panels: Panels, width: number): SVGElement {
  const x = xScale(panels.x, width);
  const sides = { left: margin.left, right: width - margin.right };
  return canvas(
    width,
    height,
    ...grid(panels, sides),
    ...along(panels.x, x, panels.coherence.bottom, sides),
    ...modelDrawn(drawn, panels, x),
    ...drawn.lines.flatMap((line, index) => lineDrawn(line, index, panels, x)),
    // Of several the table tells the numbers, which would stand on each other here.
    ...drawn.lines.flatMap((line) => marksOf(line, panels, x, drawn.lines.length === 1)),
  );
}

function grid({ gain, phase, coherence }: Panels, sides: PanelSides): readonly SVGElement[] {
  const title = ({ axis, top }: Panel) =>
    words(axis.unit === '' ? axis.title : `${axis.title}, ${axis.unit}`, {
      class: 'tick',
      x: sides.left,
      y: top - 5,
    });
  return [
    ...rules(gain, [...ticksOf(gain.axis, 4)], sides),
    ...rules(phase, stepsOf(phase.axis, 90), sides),
    ...rules(coherence, [0, sureFrom, 1], sides),
    ...[gain, phase, coherence].map(title),
  ];
}

function modelDrawn({ model }: DrawnResponse, { gain, phase }: Panels, x: AxisScale): readonly SVGElement[] {
  if (model === null) return [];
  const { frequencies, gain: gains, phase: phases } = model.curve;
  return [
    shape('path', { class: 'filter', d: curvePath(frequencies, gains, x, panelScale(gain)) }),
    shape('path', { class: 'filter', d: curvePath(frequencies, phases, x, panelScale(phase)) }),
  ];
}

/** All of it thin and grey; over that in ink what is sure, with the span of the gain about it. */
function lineDrawn(
  { curve }: ResponseLine,
  index: number,
  { gain, phase, coherence }: Panels,
  x: AxisScale,
): readonly SVGElement[] {
  const { frequencies } = curve;
  const isSure = (at: number) => (curve.coherence[at] ?? 0) >= sureFrom;
  const both = (values: readonly number[], panel: Panel) => [
    shape('path', { class: 'unsure', d: curvePath(frequencies, values, x, panelScale(panel)) }),
    shape('path', {
      class: `curve curve-${index % 4}`,
      d: curvePath(frequencies, values, x, panelScale(panel), isSure),
    }),
  ];
  return [
    shape('path', { class: 'spread', d: spreadPath(curve, x, panelScale(gain), isSure) }),
    ...both(curve.gain, gain),
    ...both(curve.phase, phase),
    ...both(curve.coherence, coherence),
  ];
}

/** Nine times in ten the gain lies within. */
function spreadPath(
  { frequencies, gain, off }: ResponseCurve,
  x: AxisScale,
  y: AxisScale,
  isSure: (at: number) => boolean,
): string {
  const by = (at: number, sign: 1 | -1) =>
    (gain[at] ?? 0) + 20 * Math.log10(Math.max(0.01, 1 + sign * (off[at] ?? 0)));
  return areaBetween(
    gain.map((value, at) =>
      Number.isFinite(value) && isSure(at) ? [x(frequencies[at] ?? 0), y(by(at, -1)), y(by(at, 1))] : null,
    ),
  );
}

/** Where no more than 71 % comes, and where it comes half a turn late. */
function marksOf(
  { curve, bandwidth }: ResponseLine,
  { gain, phase }: Panels,
  x: AxisScale,
  isNamed: boolean,
): readonly SVGElement[] {
  const late = halfTurnAt(curve);
  const mark = (frequency: number, value: number, panel: Panel, text: string) => {
    const place = { cx: x(frequency), cy: panelScale(panel)(value) };
    const [low, high] = x.range;
    const isRight = place.cx > (low + high) / 2;
    const label = { class: 'named', 'text-anchor': isRight ? 'end' : 'start' };
    return [
      shape('circle', { class: 'peak', r: 3.5, ...place }),
      ...(isNamed ? [words(text, { ...label, x: place.cx + (isRight ? -7 : 7), y: place.cy + 13 })] : []),
    ];
  };
  return [
    ...(bandwidth === null
      ? []
      : mark(
          bandwidth.likely,
          gainAt(curve, bandwidth.likely),
          gain,
          `−3 dB: ${figureText(bandwidth.likely, 'Hz')}`,
        )),
    ...(late === null ? [] : mark(late, -180, phase, `−180°: ${figureText(late, 'Hz')}`)),
  ];
}

function gainAt({ frequencies, gain }: ResponseCurve, frequency: number): number {
  return gain[nearest(frequencies, frequency)] ?? 0;
}

function tableOf({ title, lines, model }: DrawnResponse, at: readonly number[]): HTMLElement {
  const steps = Math.min(tableRows, at.length);
  const shown = [
    ...new Set(
      Array.from({ length: steps }, (_, step) =>
        Math.round((step * (at.length - 1)) / Math.max(1, steps - 1)),
      ),
    ),
  ];
  const heads = [
    ...lines.flatMap(({ name }) => [`${name}: gain`, 'phase', 'coherence']),
    ...(model === null ? [] : [`${model.name}: gain`, 'phase']),
  ];
  const rows = shown.map((place) => {
    const frequency = at[place] ?? 0;
    const value = (frequencies: readonly number[], values: readonly number[], unit: string) =>
      figureText(values[nearest(frequencies, frequency)] ?? null, unit);
    return [
      figureText(frequency, 'Hz'),
      ...lines.flatMap(({ curve }) => [
        value(curve.frequencies, curve.gain, 'dB'),
        value(curve.frequencies, curve.phase, '°'),
        value(curve.frequencies, curve.coherence, ''),
      ]),
      ...(model === null
        ? []
        : [
            value(model.curve.frequencies, model.curve.gain, 'dB'),
            value(model.curve.frequencies, model.curve.phase, '°'),
          ]),
    ];
  });
  return asTable(title, ['Frequency', ...heads], rows);
}
