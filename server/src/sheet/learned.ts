import { compareText } from '../checks/report/order';
import { dateOf, flights } from '../checks/rules/remember/flights';
import { type FlightRecording, recordingOf } from '../craft/flight-recording';
import { CraftView } from '../craft/view';
import { heatSentences } from '../figures/heat-words';
import { cameDownHot } from '../figures/hot-motors';
import { measuredOn } from '../figures/measured';
import { noiseSentences, noiseWords } from '../figures/noise-words';
import { type Target, targetOfPath } from './target';

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
  /** "in the air 4.5 min" */
  readonly facts: readonly { readonly title: string; readonly text: string }[];
  /** What its readings are beside their estimates, and whether figures were corrected by them. */
  readonly measured: readonly string[];
  /** Of one after which the motors were too hot: what the filters left of their noise, and what others would. */
  readonly heat: readonly string[];
  readonly note: string | null;
  readonly changed: string | null;
  readonly damage: string | null;
  /** What the board wrote down of it, as the script names the file; null where it names none. */
  readonly recording: FlightRecording | null;
  readonly target: Target | null;
}

/** Settings of a flight that are shown as facts. */
const factSettings: readonly (readonly [setting: string, words: string])[] = [
  ['packs-flown', 'packs'],
  ['minutes', 'in the air'],
  ['air-temperature', 'air'],
  ['motor-temperature', 'warmest motor'],
  ['esc-temperature', 'speed controllers'],
  ['hover-throttle', 'hover throttle'],
  ['hover-current', 'hover current'],
  ['used-charge', 'used'],
  ['rest-cell', 'a cell at rest'],
  ['weakest-link', 'weakest link'],
];

const words = ['note', 'changed', 'damage', 'recording', 'date', 'pack'];

export function learnedPart(view: CraftView): LearnedPart {
  const all = flights(view)
    .map(({ name, pack }) => sheetFlight(view, name, pack))
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

function sheetFlight(view: CraftView, name: string, pack: string | null): SheetFlight {
  const at = (setting: string) => `flight.${name}.${setting}`;
  const text = (setting: string) => (view.isSet(at(setting)) ? view.text(at(setting)) : null);
  const facts = factSettings.flatMap(([setting, title]) =>
    view.isSet(at(setting)) && view.value(at(setting)) !== null
      ? [{ title, text: view.shown(at(setting)) }]
      : [],
  );
  const titles = new Map(factSettings);
  const set = [...words, ...factSettings.map(([setting]) => setting)]
    .map(at)
    .find((path) => view.isSet(path));
  return {
    name,
    date: dateOf(view, at('date')),
    pack,
    facts,
    measured: measuredOn(view, { flight: name }).map((one) => `${titles.get(one.kind)}: ${one.text}`),
    heat: cameDownHot(view, name) ? heatText(new CraftView(view.craft, pack)) : [],
    note: text('note'),
    changed: text('changed'),
    damage: text('damage'),
    recording: recordingOf(view, name),
    target: set === undefined ? null : targetOfPath(view, set),
  };
}

function heatText(flown: CraftView): readonly string[] {
  return [
    'The motors came down too hot.',
    ...heatSentences(flown),
    ...noiseSentences(noiseWords(flown).words),
  ];
}
