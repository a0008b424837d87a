import type { FindResult } from '../../server/src/lsp/values-protocol';
import type { TradePoint } from '../../server/src/sheet/find/answer';
import { shortNumber } from '../../server/src/units/number-text';
import { drawing, element, scroller } from '../page/element';

/** Pixels. */
const [width, height] = [620, 230];
const margin = { top: 14, right: 16, bottom: 34, left: 62 };

interface TradeMark extends TradePoint {
  readonly name: string;
  readonly kind: 'now' | 'proposed';
}

/** Delay against noise, with what is proposed and how it is now; told as a table below. */
export function tradeOff(found: FindResult): HTMLElement {
  const marks = marksOf(found);
  return element(
    'figure',
    { class: 'trade' },
    element('figcaption', {}, 'Noise against delay: farther right is later, farther down is quieter'),
    element('div', { class: 'drawn' }, drawn(found.front, marks)),
    element(
      'details',
      { class: 'told' },
      element('summary', {}, 'As a table'),
      scroller('Noise against delay', tableOf(found, marks)),
    ),
  );
}

function marksOf({ now, proposals }: FindResult): readonly TradeMark[] {
  return [
    ...(now === null ? [] : [{ ...now, name: 'Now', kind: 'now' } as const]),
    ...proposals.map(({ title, point }) => ({ ...point, name: title, kind: 'proposed' }) as const),
  ];
}

/** Equal steps to the right are equal delays; equal steps down are equal shares of noise. */
function drawn(front: readonly TradePoint[], marks: readonly TradeMark[]): SVGElement {
  const all = [...front, ...marks];
  const most = 1.06 * Math.max(...all.map(({ delay }) => delay));
  const noises = all.map(({ noise }) => Math.log10(Math.max(1e-9, noise)));
  const [low, high] = [Math.floor(Math.min(...noises)), Math.ceil(Math.max(...noises))];
  const x = (delay: number) => margin.left + (delay / most) * (width - margin.left - margin.right);
  const y = (noise: number) =>
    margin.top +
    ((high - Math.log10(Math.max(1e-9, noise))) / Math.max(1, high - low)) *
      (height - margin.top - margin.bottom);
  const path = front
    .map(({ delay, noise }, at) => `${at === 0 ? 'M' : 'L'}${x(delay).toFixed(1)} ${y(noise).toFixed(1)}`)
    .join('');
  return drawing(
    'svg',
    { viewBox: `0 0 ${width} ${height}`, 'aria-hidden': 'true' },
    ...decades(low, high).flatMap((noise) => [
      drawing('line', {
        class: 'rule',
        x1: String(margin.left),
        x2: String(width - margin.right),
        y1: String(y(noise)),
        y2: String(y(noise)),
      }),
      label(`${shortNumber(noise)} %`, margin.left - 6, y(noise) + 4, 'end'),
    ]),
    ...ticks(most).map((delay) => label(shortNumber(delay), x(delay), height - 16, 'middle')),
    label('ms of delay', width - margin.right, height - 2, 'end'),
    drawing('path', { class: 'front', d: path }),
    ...marks.flatMap((mark) => markAt(mark, x(mark.delay), y(mark.noise))),
  );
}

function markAt({ name, kind }: TradeMark, x: number, y: number): readonly SVGElement[] {
  const isRight = x > width - 120;
  const at = { cx: x.toFixed(1), cy: y.toFixed(1), r: '5', class: kind };
  const text = label(name, isRight ? x - 9 : x + 9, y - 7, isRight ? 'end' : 'start');
  text.setAttribute('class', 'named');
  return [drawing('circle', at), text];
}

function label(text: string, x: number, y: number, anchor: 'start' | 'middle' | 'end'): SVGElement {
  return drawing('text', { x: x.toFixed(1), y: y.toFixed(1), 'text-anchor': anchor }, text);
}

function decades(low: number, high: number): readonly number[] {
  return Array.from({ length: high - low + 1 }, (_, at) => 10 ** (low + at));
}

function ticks(most: number): readonly number[] {
  const power = 10 ** Math.floor(Math.log10(most));
  const step = [0.2, 0.5, 1, 2].map((one) => one * power).find((one) => most / one <= 7) ?? most;
  return Array.from({ length: Math.floor(most / step) + 1 }, (_, at) => at * step).filter(
    (one) => one < 0.94 * most,
  );
}

function tableOf({ front, unfiltered }: FindResult, marks: readonly TradeMark[]): HTMLElement {
  const rows: readonly (TradePoint & { readonly name: string })[] = [
    ...marks.filter(({ kind }) => kind === 'now'),
    ...(unfiltered === null ? [] : [{ ...unfiltered.point, name: 'Without any filter that may be off' }]),
    ...front.map((point) => ({
      ...point,
      name: marks.find((one) => one.kind === 'proposed' && one.delay === point.delay)?.name ?? 'Between them',
    })),
  ];
  const head = (text: string) => element('th', { scope: 'col' }, text);
  return element(
    'table',
    {},
    element('caption', { class: 'said' }, 'Noise against delay'),
    element(
      'thead',
      {},
      element('tr', {}, head('Setup'), head('Delay of the filters'), head('Noise passed on')),
    ),
    element(
      'tbody',
      {},
      ...rows.map(({ name, delay, noise }) =>
        element(
          'tr',
          {},
          element('th', { scope: 'row' }, name),
          element('td', {}, `${shortNumber(delay)} ms`),
          element('td', {}, `${shortNumber(noise)} %`),
        ),
      ),
    ),
  );
}
