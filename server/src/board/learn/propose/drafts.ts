import type { Catalog } from '../../../catalog/catalog';
import type { KnownParameter } from '../../../catalog/known-parameter';
import type { PartHeld } from '../../../catalog/model/board-profile';
import { wordsToSpell } from '../../meaning/words-to-spell';
import { type Lexicon, lexiconOf, type SensedWord } from '../words/lexicon';
import type { StandsFor } from './proposal';

/** A target before its words are weighed. */
export interface Draft extends StandsFor {
  readonly known: KnownParameter;
  readonly phrases: readonly (readonly SensedWord[])[];
  /** All that is said of it: what a name may say beside a phrase. */
  readonly about: ReadonlyMap<string, number>;
  /** Whether its member is a number, which a name has to give. */
  readonly isNumbered: boolean;
  /** What its collection is about, where members are told by their names; else null. */
  readonly collection: ReadonlySet<string> | null;
}

/** What no board's text holds one by one: other people's and past flights, and what has no meaning yet. */
const leftOut = /^(own|flight|radio-club)\./;

/** All that a setting of a board may stand for, with the words that say it. */
export function allDrafts(catalog: Catalog): readonly Draft[] {
  return [...catalog.parameters.values()]
    .filter(({ name, parameter }) => !leftOut.test(name) && parameter.kind !== 'date')
    .flatMap((parameter) => draftsOf(parameter, catalog));
}

function draftsOf(known: KnownParameter, catalog: Catalog): readonly Draft[] {
  const lexicon = lexiconOf(catalog);
  const said = saidOf(known, catalog, lexicon);
  const about = aboutOf(known, catalog, lexicon, said);
  return membersOf(known, catalog, lexicon).flatMap(({ member, phrases, isNumbered }) => {
    const whole = phrases === null ? said : said.flatMap((one) => phrases.map((other) => [...other, ...one]));
    const all = new Map(about);
    for (const word of phrases?.flat() ?? []) note(all, word, 1);
    const collection = member === null ? null : collectionOf(known, catalog, lexicon);
    const draft = { known, parameter: known.name, member, about: all, isNumbered, collection };
    return partsOf(known, catalog, lexicon).map(({ part, words }) => ({
      ...draft,
      part,
      phrases: whole.map((one) => [...one, ...words]),
    }));
  });
}

/** How the parameter itself is said, without its member. */
function saidOf(
  { name, parameter }: KnownParameter,
  catalog: Catalog,
  lexicon: Lexicon,
): readonly (readonly SensedWord[])[] {
  const path = name.replace(/<[a-z]+>/g, '');
  const more = catalog.tradeWords.said[name] ?? [];
  const all = [path, parameter.title, ...parameter.alsoCalled, ...more].map((text) => wordsIn(text, lexicon));
  const seen = new Set<string>();
  return all.filter((words) => {
    // A single letter says something in a name of a listing, but not here.
    const isClear = words.every(({ senses }) => (senses[0]?.trust ?? 0) >= 0.5);
    const key = conceptsOf(words).sort().join(' ');
    if (words.length === 0 || !isClear || seen.has(key)) return false;
    seen.add(key);
    return true;
  });
}

function conceptsOf(words: readonly SensedWord[]): string[] {
  return words.map(({ senses }) => senses[0]?.concept ?? '');
}

function wordsIn(text: string, lexicon: Lexicon): readonly SensedWord[] {
  const seen = new Set<string>();
  return lexicon.understand(text, false).filter(({ senses, isNumber }) => {
    const concept = senses[0]?.concept ?? '';
    if (isNumber || seen.has(concept)) return false;
    seen.add(concept);
    return true;
  });
}

function aboutOf(
  known: KnownParameter,
  catalog: Catalog,
  lexicon: Lexicon,
  said: readonly (readonly SensedWord[])[],
): Map<string, number> {
  const about = new Map<string, number>();
  for (const word of said.flat()) note(about, word, 1);
  const group = catalog.groups.get(known.group);
  for (const word of wordsIn(`${known.group} ${group?.title ?? ''}`, lexicon)) note(about, word, 1);
  for (const word of wordsIn(known.parameter.summary, lexicon)) note(about, word, 0.4);
  return about;
}

function collectionOf(known: KnownParameter, catalog: Catalog, lexicon: Lexicon): ReadonlySet<string> {
  const path = known.name.slice(0, known.name.indexOf('.<'));
  const texts = [path, catalog.groups.get(known.group)?.title ?? '', catalog.collection(path)?.one ?? ''];
  return new Set(wordsIn(texts.join(' '), lexicon).map(({ senses }) => senses[0]?.concept ?? ''));
}

function note(about: Map<string, number>, { senses }: SensedWord, share: number): void {
  for (const { concept, trust } of senses)
    about.set(concept, Math.max(about.get(concept) ?? 0, share * trust));
}

interface MemberWords {
  readonly member: string | null;
  /** Null where the parameter has no members that are said. */
  readonly phrases: readonly (readonly SensedWord[])[] | null;
  readonly isNumbered: boolean;
}

function membersOf({ name }: KnownParameter, catalog: Catalog, lexicon: Lexicon): readonly MemberWords[] {
  const collection = /^(.*?)\.<[a-z]+>/.exec(name)?.[1];
  const none = { member: null, phrases: null, isNumbered: false };
  if (collection === undefined) return [none];
  const kind = catalog.collection(collection)?.keys.kind;
  if (kind === 'numbers') return [{ ...none, isNumbered: true }];
  if (kind !== 'closed') return [none];
  return catalog.members(collection).map(({ name: member, title }) => {
    const phrases = [member, title].map((text) => wordsIn(text, lexicon)).filter(({ length }) => length > 0);
    return { member, phrases, isNumbered: false };
  });
}

interface PartWords {
  readonly part: PartHeld | null;
  /** What says which part it is. */
  readonly words: readonly SensedWord[];
}

/** The parts in which settings may hold a parameter, with the words that say which. */
function partsOf(known: KnownParameter, catalog: Catalog, lexicon: Lexicon): readonly PartWords[] {
  const { parameter } = known;
  const whole = { part: null, words: [] };
  if (parameter.kind === 'range')
    return [whole, { part: 'low', words: [lowWord] }, { part: 'high', words: [highWord] }];
  if (parameter.kind === 'place')
    return [whole, { part: 'row', words: [wordOf('row')] }, { part: 'column', words: [wordOf('column')] }];
  if (parameter.kind === 'words') {
    // Of `front-left` and `left-front`, which say the same, the first is meant.
    const seen = new Set<string>();
    const ofWords = (wordsToSpell(known, catalog) ?? []).flatMap((word): readonly PartWords[] => {
      const words = wordsIn(word, lexicon);
      const key = conceptsOf(words).sort().join(' ');
      if (words.length === 0 || seen.has(key)) return [];
      seen.add(key);
      return [
        { part: { numberOf: word }, words },
        { part: { has: word }, words },
      ];
    });
    return [whole, ...ofWords];
  }
  return [whole];
}

function wordOf(...concepts: readonly string[]): SensedWord {
  const senses = concepts.map((concept, index) => ({ concept, trust: index === 0 ? 1 : 0.9 }));
  return { text: concepts[0] ?? '', senses, isNumber: false };
}

const lowWord = wordOf('from', 'lowest', 'low-end', 'low', 'start');
const highWord = wordOf('upto', 'highest', 'high-end', 'high', 'end');
