import type { Catalog } from '../../../catalog/catalog';
import type { KnownParameter } from '../../../catalog/known-parameter';
import { staticWords } from '../../../craft/line-check';
import { fromBase, unitOf } from '../../../units/unit';
import type { LearnedLook, LearnedSetting } from '../learned-settings';
import { tellingWords } from '../words';

/** A parameter that a board's setting may stand for. A person has to say so: nothing is taken by itself. */
export interface RankedParameter {
  /** The catalogue's name. */
  readonly parameter: string;
  readonly score: number;
  /** Why, in words that end no sentence. */
  readonly reason: string;
}

interface Entry {
  readonly known: KnownParameter;
  /** How much each word tells of the parameter. */
  readonly weights: ReadonlyMap<string, number>;
  /** Words of its path without the group's. */
  readonly own: ReadonlySet<string>;
  readonly words: ReadonlySet<string>;
  /** Words for the members of its closed collection: the situations, the switch functions. */
  readonly members: ReadonlySet<string>;
  /** What it takes in the unit in which a board's number is looked at. */
  readonly range: Span | null;
  readonly usual: Span | null;
}

interface Span {
  readonly low: number;
  readonly high: number;
}

interface Index {
  readonly entries: readonly Entry[];
  readonly byWord: ReadonlyMap<string, readonly Entry[]>;
  /** The fewer parameters a word belongs to, the more it tells. */
  readonly rarity: (word: string) => number;
}

/** A proposal in the making: the reason of most of them is never asked for. */
interface Candidate {
  readonly entry: Entry;
  readonly score: number;
  readonly reason: () => string;
}

const indexes = new WeakMap<Catalog, Index>();
const most = 8;

/** Parameters of the catalogue that a setting of a listing may stand for, the likeliest first. */
export function proposeParameters(setting: LearnedSetting, catalog: Catalog): readonly RankedParameter[] {
  const index = indexOf(catalog);
  const asked = askedWords(setting);
  const likely = new Set([...asked.keys()].flatMap((word) => index.byWord.get(word) ?? []));
  return [...likely]
    .filter(({ known }) => kindsFor[setting.look].includes(known.parameter.kind))
    .map((entry) => candidate(entry, asked, setting, index))
    .sort((one, other) => other.score - one.score || (one.entry.known.name < other.entry.known.name ? -1 : 1))
    .slice(0, most)
    .map(({ entry, score, reason }) => ({ parameter: entry.known.name, score, reason: reason() }));
}

/** The setting's own words with their weight; those of its group tell less. */
function askedWords({ groups, name }: LearnedSetting): ReadonlyMap<string, number> {
  const asked = new Map<string, number>();
  for (const word of tellingWords(groups.join(' '))) asked.set(word, 0.35);
  for (const word of tellingWords(name)) asked.set(word, 1);
  return asked;
}

function candidate(
  entry: Entry,
  asked: ReadonlyMap<string, number>,
  setting: LearnedSetting,
  index: Index,
): Candidate {
  let [found, wanted, named, all] = [0, 0, 0, 0];
  for (const [word, weight] of asked) {
    const rarity = index.rarity(word);
    wanted += weight * rarity;
    found += weight * rarity * Math.min(1, entry.weights.get(word) ?? 0);
  }
  for (const word of entry.own) {
    const rarity = index.rarity(word);
    all += rarity;
    if (asked.has(word)) named += rarity;
  }
  const words = 0.62 * (found / Math.max(wanted, 1e-9)) + 0.38 * (named / Math.max(all, 1e-9));
  const { factor, reason } = fitOf(entry, setting);
  const isNamed = entry.members.size === 0 || [...entry.members].some((word) => asked.has(word));
  return {
    entry,
    score: words * factor * (isNamed ? 1 : memberless),
    reason: () => `${sharingOf(entry, asked)}; ${reason()}`,
  };
}

function sharingOf({ weights }: Entry, asked: ReadonlyMap<string, number>): string {
  const shared = [...asked.keys()].filter((word) => (weights.get(word) ?? 0) > 0.3);
  return shared.length === 0 ? 'its words are near' : `both say ${shared.slice(0, 4).join(', ')}`;
}

/** A setting of one member of a collection surely says of which. */
const memberless = 0.6;

interface Fit {
  readonly factor: number;
  readonly reason: () => string;
}

const kindsFor: Readonly<Record<LearnedLook, readonly string[]>> = {
  number: ['quantity', 'count', 'range', 'curve', 'place', 'flag'],
  flag: ['flag', 'word'],
  word: ['word', 'words', 'text', 'quantity', 'count'],
  words: ['word', 'words', 'text'],
  text: ['text'],
  list: ['words', 'range', 'place'],
};

/** How well the value suits what the parameter takes. */
function fitOf(entry: Entry, { look, value, number, stated }: LearnedSetting): Fit {
  const { parameter } = entry.known;
  if (parameter.kind === 'flag' && look === 'number' && value !== '0' && value !== '1')
    return { factor: 0.35, reason: () => `${value} is no flag` };
  if (look === 'number') return numberFit(entry, number);
  const said = (stated?.words ?? [value]).flatMap((word) => tellingWords(word));
  if (said.some((word) => entry.words.has(word)))
    return { factor: 1.15, reason: () => `${value} is like one of its words` };
  return { factor: 1, reason: () => `${value} may be one of its words` };
}

/** Boards count in tenths, hundredths or thousandths where it saves them a point. */
const scales = [1, 10, 100, 1000, 0.001];

function numberFit({ known, range, usual }: Entry, value: number): Fit {
  if (range === null || Number.isNaN(value)) return { factor: 1, reason: () => 'it takes numbers' };
  const within = ({ low, high }: Span, scale: number) =>
    value / scale >= low - 1e-9 && value / scale <= high + 1e-9;
  const unit = unitText(known);
  const span = () => `${range.low} to ${range.high}${unit === '' ? '' : ` ${unit}`}`;
  if (usual !== null && within(usual, 1))
    return { factor: 1.12, reason: () => `${value} is usual within ${span()}` };
  if (within(range, 1)) return { factor: 1.06, reason: () => `${value} lies in ${span()}` };
  const scale = scales.find((one) => within(range, one));
  if (scale !== undefined && value !== 0)
    return { factor: 1, reason: () => `${value} lies in ${span()} if it is scaled` };
  return { factor: 0.7, reason: () => `${value} lies outside ${span()}` };
}

function unitText({ parameter }: KnownParameter): string {
  return parameter.kind === 'quantity' || parameter.kind === 'range' ? parameter.unit : '';
}

function indexOf(catalog: Catalog): Index {
  const known = indexes.get(catalog);
  if (known !== undefined) return known;
  const made = makeIndex(catalog);
  indexes.set(catalog, made);
  return made;
}

function makeIndex(catalog: Catalog): Index {
  const entries = [...catalog.parameters.values()].map((one) => entryOf(one, catalog));
  const byWord = new Map<string, Entry[]>();
  for (const entry of entries)
    for (const word of entry.weights.keys()) {
      const all = byWord.get(word) ?? [];
      all.push(entry);
      byWord.set(word, all);
    }
  const rarityOf = (count: number) => Math.log(1 + entries.length / (1 + count));
  const rarities = new Map([...byWord].map(([word, { length }]) => [word, rarityOf(length)]));
  const unknown = rarityOf(0);
  return { entries, byWord, rarity: (word) => rarities.get(word) ?? unknown };
}

function entryOf(known: KnownParameter, catalog: Catalog): Entry {
  const { parameter, name } = known;
  const weights = new Map<string, number>();
  const add = (text: string, weight: number) => {
    for (const word of tellingWords(text)) weights.set(word, Math.max(weight, weights.get(word) ?? 0));
  };
  const path = name.replace(/<[a-z]+>/g, '');
  const choices = staticWords({ ...known, path: name, keys: [] }, catalog) ?? [];
  add(parameter.summary, 0.3);
  for (const choice of choices) add(choice, 0.3);
  add(catalog.groups.get(name.split('.')[0] ?? '')?.title ?? '', 0.5);
  add(parameter.title, 0.95);
  for (const said of parameter.alsoCalled) add(said, 0.9);
  add(path, 1);
  const collection = name.match(/^(.*?)\.<[a-z]+>/)?.[1];
  const members = collection === undefined ? [] : catalog.members(collection);
  for (const { name: member, title } of members) add(`${member} ${title}`, 0.6);
  const isClosed = catalog.collection(collection ?? '')?.keys.kind === 'closed';
  const own = tellingWords(path.split('.').slice(1).join(' '));
  const unit = unitText(known);
  const inUnit = (base: number) => (unit === '' ? base : fromBase(base, unitOf(unit)));
  const span = (held: Span | undefined) =>
    held === undefined ? null : { low: inUnit(held.low), high: inUnit(held.high) };
  return {
    known,
    range: span(known.range),
    usual: span(known.usual),
    weights,
    own: new Set(own.length > 0 ? own : tellingWords(path)),
    words: new Set(choices.flatMap((choice) => tellingWords(choice))),
    members: new Set(isClosed ? members.flatMap(({ name, title }) => tellingWords(`${name} ${title}`)) : []),
  };
}
