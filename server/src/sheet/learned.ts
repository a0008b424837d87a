import { compareText } from '../checks/report/order';
import { dateOf, flights } from '../checks/rules/remember/flights';
import type { CraftView } from '../craft/view';
import { figureOf } from '../figures';
import { intervalWords } from './bench-card/words';
import { type Target, targetOfPath } from './target';
import { figureText, intervalText } from './which-pack';

/** Part 7: the flights, newest first, with what changed before each. */
export interface LearnedPart {
  readonly id: 'learned';
  readonly title: string;
  readonly answer: string;
  readonly flights: readonly SheetFlight[];
  readonly caution: string;
}

export interface SheetFlight {
  readonly name: string;
  readonly date: string | null;
  readonly pack: string | null;
  /** "minutes 4.5 min", and beside it what was estimated, where it was. */
  readonly facts: readonly {
    readonly title: string;
    readonly text: string;
    readonly estimate: string | null;
  }[];
  readonly note: string | null;
  readonly changed: string | null;
  readonly damage: string | null;
  readonly target: Target | null;
}

/** Settings of a flight that are shown as facts, with the figure that estimates them. */
const factSettings: readonly (readonly [setting: string, words: string, figure: string | null])[] = [
  ['packs-flown', 'packs', null],
  ['minutes', 'in the air', null],
  ['air-temperature', 'air', null],
  ['motor-temperature', 'warmest motor', null],
  ['esc-temperature', 'speed controllers', null],
  ['hover-throttle', 'hover throttle', 'hover-throttle'],
  ['hover-current', 'hover current', 'hover-current'],
  ['used-charge', 'used', null],
  ['rest-cell', 'a cell at rest', null],
  ['weakest-link', 'weakest link', null],
];

const words = ['note', 'changed', 'damage', 'date', 'pack'];

export function learnedPart(view: CraftView): LearnedPart {
  const all = flights(view)
    .map(({ name, pack, view: flown }) => sheetFlight(view, name, pack, flown))
    .sort((one, other) => compareText(other.date ?? '', one.date ?? ''));
  return {
    id: 'learned',
    title: 'What did I learn?',
    answer:
      all.length === 0
        ? 'no flight noted'
        : all.length === 1
          ? '1 flight noted'
          : `${all.length} flights noted`,
    flights: all,
    caution: 'One change a flight can be judged; about a dozen packs make a tune trustworthy.',
  };
}

function sheetFlight(view: CraftView, name: string, pack: string | null, flown: CraftView): SheetFlight {
  const at = (setting: string) => `flight.${name}.${setting}`;
  const text = (setting: string) => (view.isSet(at(setting)) ? view.text(at(setting)) : null);
  const facts = factSettings.flatMap(([setting, title, figure]) => {
    if (!view.isSet(at(setting)) || view.value(at(setting)) === null) return [];
    return [
      { title, text: view.shown(at(setting)), estimate: figure === null ? null : estimateOf(flown, figure) },
    ];
  });
  const set = [...words, ...factSettings.map(([setting]) => setting)]
    .map(at)
    .find((path) => view.isSet(path));
  return {
    name,
    date: dateOf(view, at('date')),
    pack,
    facts,
    note: text('note'),
    changed: text('changed'),
    damage: text('damage'),
    target: set === undefined ? null : targetOfPath(view, set),
  };
}

/** "31 to 39 %" or "35 %". */
function estimateOf(flown: CraftView, id: string): string | null {
  const figure = figureOf(flown, id);
  if (figure === null) return null;
  const span = intervalText(figure);
  return span === null ? figureText(figure) : `${intervalWords(span)} ${figure.unit}`;
}
