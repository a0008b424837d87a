import type { CarrierStrip } from '../../../server/src/sheet/plots/plot';
import { element } from '../../page/element';
import { asTable } from './as-table';
import { figureText, wholeText } from './figure-text';
import { canvas, framed, shape, sized, words } from './frame';
import { type AxisScale, scaleOf, ticksOf } from './scales';

const rule = 62;
const height = 92;

/** Pictures beside each other, in what the region opens, with what two of them make together below. */
export function carrierStrip(plot: CarrierStrip): HTMLElement {
  const { id, title, open, carriers, products } = plot;
  const megahertz = (value: number) => `${Math.round(value * 10) / 10} MHz`;
  const rows = [
    ...carriers.map(({ name, frequency, halfWidth }) => [
      name,
      `${megahertz(frequency)}, ${figureText(halfWidth, 'MHz')} to either side`,
    ]),
    ...open.map(({ from, to, name }) => [name, `${megahertz(from)} to ${megahertz(to)}`]),
    ...products.map(({ frequency, name }) => [name, megahertz(frequency)]),
  ];
  const legend = [
    open.length === 0 ? null : 'shaded: open here as far as the catalogue knows; local rules decide',
    products.length === 0 ? null : 'ticks below: what two or three pictures make together',
  ].flatMap((text) => (text === null ? [] : [element('li', {}, text)]));
  return framed(
    { title },
    sized((width) => drawn(plot, width)),
    element('ul', { class: 'legend' }, ...legend),
    asTable(id, title, ['Who', 'Where'], rows),
  );
}

function drawn({ low, high, open, carriers, products }: CarrierStrip, width: number): SVGElement {
  const axis = { title: 'Frequency', unit: 'MHz', low, high, isLogarithmic: false };
  const x = scaleOf(axis, 4, width - 4);
  const ticks = ticksOf(axis, width < 380 ? 3 : 6).filter((value) => x(value) < width - 50 && x(value) > 12);
  return canvas(
    width,
    height,
    ...open.flatMap(({ from, to, name }) => [
      shape('rect', { class: 'open', x: x(from), y: 14, width: x(to) - x(from), height: rule - 14 }),
      words(name, { class: 'tick', x: x(from) + 4, y: 11 }),
    ]),
    shape('line', { class: 'rule', x1: 0, x2: width, y1: rule, y2: rule }),
    ...[...carriers]
      .sort((a, b) => a.frequency - b.frequency)
      .flatMap((one, index) => carrier(one, index, x, width)),
    ...products.map(({ frequency }) =>
      shape('line', { class: 'product', x1: x(frequency), x2: x(frequency), y1: rule + 2, y2: rule + 10 }),
    ),
    ...ticks.map((value) =>
      words(wholeText(value), {
        class: 'tick',
        x: x(value),
        y: height - 4,
        'text-anchor': 'middle',
      }),
    ),
    words('MHz', { class: 'tick', x: width - 4, y: height - 4, 'text-anchor': 'end' }),
  );
}

/** Neighbours' names stand in two rows, so that they don't run into each other. */
function carrier(
  { name, frequency, halfWidth, isOwn }: CarrierStrip['carriers'][number],
  index: number,
  x: AxisScale,
  width: number,
): readonly SVGElement[] {
  const [from, to] = [x(frequency - halfWidth), x(frequency + halfWidth)];
  const middle = x(frequency);
  const anchor = middle < 50 ? 'start' : middle > width - 50 ? 'end' : 'middle';
  const at = anchor === 'start' ? from : anchor === 'end' ? to : middle;
  return [
    shape('rect', {
      class: isOwn ? 'own' : 'other',
      x: from,
      y: 42,
      width: Math.max(2, to - from),
      height: rule - 42,
    }),
    words(name, {
      class: isOwn ? 'named' : 'tick',
      x: at,
      y: index % 2 === 0 ? 38 : 26,
      'text-anchor': anchor,
    }),
  ];
}
