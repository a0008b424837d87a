import type { NoiseMap } from '../../server/src/lsp/recording-protocol';
import { element } from '../page/element';
import { figureText } from '../sheet/plots/figure-text';
import { framed } from '../sheet/plots/frame';
import { readable } from '../sheet/plots/readable';
import { ramp } from './ramp';
import { asTable } from './table';

/** Pixels. */
const height = 200;
const margin = { top: 6, right: 8, bottom: 22, left: 44 };

/** How loud each frequency is against how hard the motors work: what moves with them leans, what stands still does not. */
export function heatMap(map: NoiseMap): HTMLElement {
  const title = `Noise about ${map.axis}: Hz, against ${map.against}`;
  const [low, high] = rangeOf(map);
  const columns = columnsOf(map);
  const said = element('span', { class: 'read' });
  const scale = element('canvas', { class: 'ramp', width: '80', height: '8', 'aria-hidden': 'true' });
  const picture = element('canvas', { class: 'heat', 'aria-hidden': 'true' });
  const legend = element(
    'ul',
    { class: 'legend' },
    element('li', {}, `${figureText(low, 'dB')} `, scale, ` ${figureText(high, 'dB')}`),
    element('li', {}, 'blank: never flown there'),
    element('li', {}, said),
  );
  const holder = element('div', { class: 'drawn' }, picture);
  const redraw = () => {
    const width = Math.floor(holder.clientWidth);
    if (width > 0) draw(picture, map, { width, low, high });
    drawRamp(scale);
  };
  new ResizeObserver(redraw).observe(holder);
  // Another theme has other colours; the picture holds the old ones until it is drawn again.
  new MutationObserver(redraw).observe(document.body, { attributes: true, attributeFilter: ['class'] });
  const inner = (width: number) => width - margin.left - margin.right;
  const frame = readable({
    id: `heat-${map.axis}-${map.against}`,
    label: `${title}. One column after the other, with its loudest frequency.`,
    count: columns.length,
    describe: (index) => {
      const text = index === null ? '' : (columns[index]?.text ?? '');
      said.textContent = text;
      return text;
    },
    indexAt: (x, width) =>
      Math.min(
        columns.length - 1,
        Math.max(0, Math.floor(((x - margin.left) / inner(width)) * columns.length)),
      ),
    placeOf: (index, width) => margin.left + ((index + 0.5) / columns.length) * inner(width),
    drawn: holder,
  });
  const rows = columns.map(({ where, frequency, loudest }) => [
    where,
    frequency === null ? 'never flown there' : figureText(frequency, 'Hz'),
    figureText(loudest, 'dB'),
  ]);
  const heads = [map.against === 'throttle' ? 'Throttle' : 'Motor speed', 'Loudest at', 'Loudness'];
  return framed({ title, beside: legend }, frame, asTable(title, heads, rows));
}

interface Column {
  readonly where: string;
  readonly frequency: number | null;
  readonly loudest: number | null;
  readonly text: string;
}

/** What each column says in words: where it is loudest. */
function columnsOf(map: NoiseMap): readonly Column[] {
  const { edges, frequencies, decibels, against } = map;
  return edges.slice(0, -1).map((from, column) => {
    const where = whereText(from, edges[column + 1] ?? from, against);
    let [frequency, loudest]: [number | null, number | null] = [null, null];
    for (const [row, at] of frequencies.entries()) {
      if (at < lowest) continue;
      const value = decibels[row]?.[column] ?? null;
      if (value === null || (loudest !== null && value <= loudest)) continue;
      [frequency, loudest] = [at, value];
    }
    const text =
      frequency === null
        ? `${where}: never flown there`
        : `${where}: loudest at ${figureText(frequency, 'Hz')}, ${figureText(loudest, 'dB')}`;
    return { where, frequency, loudest, text };
  });
}

function whereText(from: number, to: number, against: NoiseMap['against']): string {
  if (against === 'throttle') return `${Math.round(100 * from)} to ${Math.round(100 * to)} %`;
  return `${figureText(from, '')} to ${figureText(to, 'Hz')}`;
}

/** Hz: below it the craft is flown on purpose, and that is louder than all noise. */
const lowest = 30;

/** From the floor, which most of the map is, to the loudest noise; rounded to 5 dB. */
function rangeOf({ decibels, frequencies }: NoiseMap): readonly [number, number] {
  const values = decibels
    .flatMap((row, at) => ((frequencies[at] ?? 0) < lowest ? [] : row))
    .filter((value) => value !== null && Number.isFinite(value))
    .sort((one, other) => (one ?? 0) - (other ?? 0));
  const at = (share: number) => values[Math.floor(share * (values.length - 1))] ?? 0;
  const low = 5 * Math.floor(at(0.3) / 5);
  return [low, Math.max(low + 5, 5 * Math.ceil(at(1) / 5))];
}

interface Size {
  readonly width: number;
  readonly low: number;
  readonly high: number;
}

function draw(canvas: HTMLCanvasElement, map: NoiseMap, { width, low, high }: Size): void {
  const density = window.devicePixelRatio || 1;
  canvas.width = Math.round(width * density);
  canvas.height = Math.round(height * density);
  canvas.style.height = `${height}px`;
  const context = canvas.getContext('2d');
  if (context === null) return;
  context.scale(density, density);
  const colours = ramp(canvas);
  const [plotWidth, plotHeight] = [width - margin.left - margin.right, height - margin.top - margin.bottom];
  const { frequencies, decibels, edges } = map;
  const columns = edges.length - 1;
  const y = (row: number) => margin.top + plotHeight * (1 - row / frequencies.length);
  for (const [row, values] of decibels.entries())
    for (const [column, value] of values.entries()) {
      if (value === null) continue;
      context.fillStyle = colours.at((value - low) / (high - low));
      const left = margin.left + (plotWidth * column) / columns;
      // A little wider, so that no line shows between two of them.
      context.fillRect(left, y(row + 1), plotWidth / columns + 0.6, plotHeight / frequencies.length + 0.6);
    }
  context.strokeStyle = colours.line;
  context.strokeRect(margin.left - 0.5, margin.top - 0.5, plotWidth + 1, plotHeight + 1);
  label(context, map, colours.muted, { plotWidth, plotHeight, y });
}

interface Plotted {
  readonly plotWidth: number;
  readonly plotHeight: number;
  readonly y: (row: number) => number;
}

function label(context: CanvasRenderingContext2D, map: NoiseMap, colour: string, plotted: Plotted): void {
  const { plotWidth, plotHeight, y } = plotted;
  const { frequencies, edges, against } = map;
  context.fillStyle = colour;
  context.font = `11px ${getComputedStyle(document.body).fontFamily}`;
  context.textAlign = 'right';
  const highest = frequencies.at(-1) ?? 0;
  for (const frequency of roundSteps(0, highest, 4)) {
    const row = (frequency / (highest || 1)) * frequencies.length;
    context.fillText(figureText(frequency, ''), margin.left - 5, Math.max(margin.top + 8, y(row) + 4));
  }
  context.textAlign = 'left';
  const bottom = margin.top + plotHeight + 15;
  const [first, last] = [edges[0] ?? 0, edges.at(-1) ?? 1];
  const factor = against === 'throttle' ? 100 : 1;
  context.textAlign = 'center';
  for (const value of roundSteps(first * factor, last * factor, plotWidth < 300 ? 4 : 8)) {
    const x = margin.left + ((value / factor - first) / (last - first)) * plotWidth;
    if (x < margin.left + plotWidth - 30) context.fillText(figureText(value, ''), x, bottom);
  }
  context.textAlign = 'right';
  context.fillText(against === 'throttle' ? '%' : 'Hz', margin.left + plotWidth, bottom);
}

function roundSteps(low: number, high: number, count: number): readonly number[] {
  const rough = (high - low) / count;
  const power = 10 ** Math.floor(Math.log10(rough || 1));
  const step = [1, 2, 5, 10].map((one) => one * power).find((one) => one >= rough) ?? power;
  const first = Math.ceil(low / step);
  return Array.from({ length: Math.floor(high / step) - first + 1 }, (_, at) => (first + at) * step);
}

function drawRamp(canvas: HTMLCanvasElement): void {
  const context = canvas.getContext('2d');
  if (context === null) return;
  const colours = ramp(canvas);
  for (let x = 0; x < canvas.width; x += 1) {
    context.fillStyle = colours.at(x / (canvas.width - 1));
    context.fillRect(x, 0, 1, canvas.height);
  }
}
