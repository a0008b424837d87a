import { element } from '../page/element';
import { post } from './extension-side';
import { measuredWords } from './measured';
import { likelyText } from './measured-text';
import type { FlightNoise } from './messages';
import { table } from './table';

/** How the craft shook from flight to flight: what grows is worn. */
export function historySections(flights: readonly FlightNoise[]): readonly HTMLElement[] {
  if (flights.length === 0)
    return [
      element('p', {}, 'No flight of this script names a recording yet. A line says it: '),
      element('pre', {}, '[flight.day]\nrecording = "flights/day.csv"'),
    ];
  const axes = [...new Set(flights.flatMap((one) => noiseOf(one).map(({ axis }) => axis)))];
  return [
    ...axes.flatMap((axis) => dots(axis, flights)),
    table(
      'Shaking from flight to flight',
      ['Flight', 'Recording', ...axes.map((axis) => `About ${axis}`)],
      flights.map((one) => [
        [one.flight.date, one.flight.flight.replaceAll('-', ' ')].filter((text) => text !== null).join(', '),
        element('span', {}, openPress(one), one.why === null ? null : withheldWhy(one.why)),
        ...axes.map((axis) => {
          const shaking = noiseOf(one).find((noise) => noise.axis === axis)?.shaking;
          return shaking === undefined ? '–' : measuredWords(shaking);
        }),
      ]),
    ),
    element(
      'p',
      { class: 'aside' },
      'More shaking at the same throttle from flight to flight: a worn bearing, a bent or nicked propeller, a loose arm.',
    ),
  ];
}

function openPress({ flight: { uri, path } }: FlightNoise): HTMLElement {
  const press = () => post({ kind: 'open', uri });
  return element(
    'button',
    { type: 'button', class: 'value', 'aria-label': `Open Recording ${path}`, onclick: press },
    path,
  );
}

function withheldWhy(why: string): HTMLElement {
  return element('span', { class: 'aside why' }, why);
}

function noiseOf({ reported }: FlightNoise) {
  return reported?.report.noise.told ?? [];
}

/** Bars from nothing to the loudest, oldest first. */
function dots(axis: string, flights: readonly FlightNoise[]): readonly HTMLElement[] {
  const own = flights.flatMap((one) => {
    const shaking = noiseOf(one).find((noise) => noise.axis === axis)?.shaking;
    return shaking === undefined ? [] : [{ name: one.flight.date ?? one.flight.flight, shaking }];
  });
  const most = Math.max(...own.map(({ shaking }) => shaking.high));
  if (own.length < 2 || !(most > 0)) return [];
  return [
    element(
      'div',
      { class: 'history', 'aria-hidden': 'true' },
      element('h3', {}, `Shaking about ${axis}`),
      ...own.map(({ name, shaking }) => {
        const bar = element('span', { class: 'grown' });
        bar.style.width = `${(100 * shaking.likely) / most}%`;
        return element(
          'div',
          { class: 'grown-row' },
          element('span', {}, name),
          element('span', { class: 'grown-track' }, bar),
          element('span', {}, likelyText(shaking)),
        );
      }),
    ),
  ];
}
