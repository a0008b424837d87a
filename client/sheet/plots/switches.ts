import type { SwitchBars } from '../../../server/src/sheet/plots/plot';
import { valueLink } from '../link';
import { asTable } from './as-table';
import { figureText, wholeText } from './figure-text';
import { canvas, framed, shape, sized, words } from './frame';
import { type AxisScale, scaleOf, ticksOf } from './scales';

const rowHeight = 22;
const left = 74;

/** A row for each function: its channel, and the part of the travel in which it is on. */
export function switchBars(plot: SwitchBars): HTMLElement {
  const { id, title, switches } = plot;
  const rows = switches.map(({ name, channel, from, to, rest, target }) => [
    name,
    String(channel),
    valueLink(target, name, `${figureText(from, '')} to ${figureText(to, 'µs')}`),
    figureText(rest, 'µs'),
  ]);
  return framed(
    { title },
    sized((width) => drawn(plot, width)),
    asTable(id, title, ['Function', 'Channel', 'On from', 'At rest'], rows),
  );
}

function drawn({ low, high, switches }: SwitchBars, width: number): SVGElement {
  const axis = { title: 'Pulse', unit: 'µs', low, high, isLogarithmic: false };
  const x = scaleOf(axis, left, width - 4);
  const bottom = switches.length * rowHeight;
  const ticks = ticksOf(axis, width < 380 ? 3 : 6).filter((value) => x(value) < width - 34);
  return canvas(
    width,
    bottom + 18,
    ...switches.flatMap((one, index) => bar(one, index * rowHeight, x, width)),
    ...ticks.map((value) =>
      words(wholeText(value), {
        class: 'tick',
        x: x(value),
        y: bottom + 13,
        'text-anchor': 'middle',
      }),
    ),
    words('µs', { class: 'tick', x: width - 4, y: bottom + 13, 'text-anchor': 'end' }),
  );
}

function bar(
  { name, channel, from, to, rest }: SwitchBars['switches'][number],
  top: number,
  x: AxisScale,
  width: number,
): readonly SVGElement[] {
  const middle = top + rowHeight / 2;
  const isRight = x(from) > width * 0.6;
  const label = isRight ? { x: x(from) - 5, 'text-anchor': 'end' } : { x: x(to) + 5, 'text-anchor': 'start' };
  return [
    words(`channel ${channel}`, { class: 'tick', x: 0, y: middle + 4 }),
    shape('line', { class: 'rule', x1: left, x2: width - 4, y1: middle, y2: middle }),
    shape('rect', {
      class: 'strip',
      x: x(from),
      y: middle - 6,
      width: Math.max(2, x(to) - x(from)),
      height: 12,
      rx: 2,
    }),
    words(name, { class: 'named', y: middle + 4, ...label }),
    ...(rest === null ? [] : [shape('circle', { class: 'likely', cx: x(rest), cy: middle, r: 3.5 })]),
  ];
}
