import type { FindResult } from '../../server/src/lsp/values-protocol';
import type { TradePoint } from '../../server/src/sheet/find/answer';
import { trembleText } from '../../server/src/sheet/find/measured-text';
import { shortNumber } from '../../server/src/units/number-text';
import { element, scroller } from '../page/element';
import { canvas, shape, sized, words, wordsWidth } from '../sheet/plots/frame';

/** Pixels. */
const height = 230;
const margin = { top: 18, right: 16, bottom: 34, left: 62 };

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
    element(
      'figcaption',
      {},
      `Noise (% of throttle for ${trembleText(found.nowReadings)}) against delay: farther right is later, farther down is quieter`,
    ),
    sized((width) => drawn(found.front, marks, width)),
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
function drawn(front: readonly TradePoint[], marks: readonly TradeMark[], width: number): SVGElement {
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
  const placed = marks.map((mark): PlacedMark => ({ ...mark, x: x(mark.delay), y: y(mark.noise) }));
  const isTight = width < 400;
  return canvas(
    width,
    height,
    ...decades(low, high).flatMap((noise) => [
      shape('line', {
        class: 'rule',
        x1: margin.left,
        x2: width - margin.right,
        y1: y(noise),
        y2: y(noise),
      }),
      label(`${shortNumber(noise)} %`, margin.left - 6, y(noise) + 4, 'end'),
    ]),
    ...ticks(most, isTight ? 4 : 7).map((delay) =>
      label(shortNumber(delay), x(delay), height - 16, 'middle'),
    ),
    label('ms of delay', width - margin.right, height - 2, 'end'),
    shape('path', { class: 'front', d: path }),
    ...placed.map(({ kind, x: cx, y: cy }) => shape('circle', { class: kind, cx, cy, r: 5 })),
    ...namesOf(placed, width),
  );
}

type PlacedMark = TradeMark & { readonly x: number; readonly y: number };

/** Left, right, top and bottom, in pixels. */
type WordBox = readonly [number, number, number, number];

/** Each name beside its dot, at the first of four places where it covers neither a dot nor another name. */
function namesOf(marks: readonly PlacedMark[], width: number): readonly SVGElement[] {
  const taken: WordBox[] = marks.map(({ x, y }) => [x - 5, x + 5, y - 5, y + 5]);
  return marks.map(({ name, x, y }) => {
    const long = wordsWidth(name);
    const places = [-7, 16].flatMap((down) => [
      { at: x + 7, down, anchor: 'start' as const },
      { at: x - 7, down, anchor: 'end' as const },
    ]);
    const boxOf = ({ at, down, anchor }: (typeof places)[number]): WordBox => {
      const left = anchor === 'start' ? at : at - long;
      return [left, left + long, y + down - 10, y + down + 3];
    };
    const isFree = (box: WordBox) =>
      box[0] >= margin.left && box[1] <= width && !taken.some((one) => overlap(one, box));
    const place = places.find((one) => isFree(boxOf(one))) ?? places[0];
    if (place === undefined) throw new Error('a name has a place');
    taken.push(boxOf(place));
    return words(name, { class: 'named', x: place.at, y: y + place.down, 'text-anchor': place.anchor });
  });
}

function overlap(one: WordBox, other: WordBox): boolean {
  return one[0] < other[1] && other[0] < one[1] && one[2] < other[3] && other[2] < one[3];
}

function label(text: string, x: number, y: number, anchor: 'start' | 'middle' | 'end'): SVGElement {
  return words(text, { x, y, 'text-anchor': anchor });
}

function decades(low: number, high: number): readonly number[] {
  return Array.from({ length: high - low + 1 }, (_, at) => 10 ** (low + at));
}

function ticks(most: number, count: number): readonly number[] {
  const power = 10 ** Math.floor(Math.log10(most));
  const step = [0.2, 0.5, 1, 2].map((one) => one * power).find((one) => most / one <= count) ?? most;
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
