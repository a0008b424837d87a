import type { Catalog } from '../../../catalog/catalog';
import type { Concept, TradeWords } from '../../../catalog/model/trade-words';
import { gluedParts } from './glued';
import { Guesses, type Sense } from './guesses';
import { isNumberWord, nameWords, stemOf } from './name-words';

/** A word of a name, or a few that are one, with what it may speak of. */
export interface SensedWord {
  readonly text: string;
  /** Empty for a number. */
  readonly senses: readonly Sense[];
  readonly isNumber: boolean;
}

const longestExpression = 4;
const mostKept = 20_000;

/** What words of names speak of, by the list of the trade's words. */
export class Lexicon {
  private readonly concepts: ReadonlyMap<string, Concept>;
  /** What is said by words that belong together: words parted by blanks. */
  private readonly exact = new Map<string, Sense[]>();
  private readonly stemmed = new Map<string, Sense[]>();
  private readonly guesses = new Guesses();
  private readonly empty: ReadonlySet<string>;
  /** Words for numbers, with their digits. */
  private readonly numbers: ReadonlyMap<string, string>;
  private readonly kept = new Map<string, readonly (readonly Sense[])[]>();

  constructor(words: TradeWords) {
    this.concepts = new Map(words.concepts.map((one) => [one.concept, one]));
    this.empty = new Set(Object.values(words.empty).flat());
    this.numbers = new Map(
      Object.values(words.numbers).flatMap((all) => all.map((word, at) => [word, String(at + 1)] as const)),
    );
    for (const one of words.concepts) this.addConcept(one);
  }

  /** What concepts are called, for a sentence. */
  labelOf(concept: string): string {
    return this.concepts.get(concept)?.words.en?.[0] ?? concept.replace(/^=/, '');
  }

  /** The words of a name with what they may speak of. `guesses`: whether shortened words are looked for. */
  understand(text: string, guesses: boolean): readonly SensedWord[] {
    const words = nameWords(text);
    const found: SensedWord[] = [];
    for (let at = 0; at < words.length; ) {
      const taken = this.expressionAt(words, at, found);
      if (taken === 0) this.addWord(words, at, guesses, found);
      at += Math.max(1, taken);
    }
    return found;
  }

  /** Takes the longest expression that begins here; how many words it has, 0 for none. */
  private expressionAt(words: readonly string[], at: number, found: SensedWord[]): number {
    for (let length = Math.min(longestExpression, words.length - at); length > 1; length--) {
      const some = words.slice(at, at + length);
      const senses = this.exact.get(some.join(' ')) ?? this.stemmed.get(some.map(stemOf).join(' '));
      if (senses === undefined) continue;
      this.take(some.join(' '), senses, found);
      return length;
    }
    return 0;
  }

  private addWord(words: readonly string[], at: number, guesses: boolean, found: SensedWord[]): void {
    const word = words[at] ?? '';
    const number = isNumberWord(word) ? word : this.numbers.get(word);
    // At the end of a name `to` and `bis` say which end it is; within one they say nothing.
    const isEmpty = this.empty.has(word) && (at < words.length - 1 || !this.exact.has(word));
    if (number !== undefined) found.push({ text: number, senses: [], isNumber: true });
    else if (!isEmpty) for (const senses of this.sensesOf(word, guesses)) this.take(word, senses, found);
  }

  /** A concept that is made of others gives a word for each of them. */
  private take(text: string, senses: readonly Sense[], found: SensedWord[]): void {
    const made = senses.find(({ concept }) => this.concepts.get(concept)?.madeOf !== undefined);
    const parts = made === undefined ? undefined : this.concepts.get(made.concept)?.madeOf;
    if (made === undefined || parts === undefined) {
      found.push({ text, senses, isNumber: false });
      return;
    }
    for (const part of parts)
      found.push({ text, senses: this.withNear({ concept: part, trust: made.trust }), isNumber: false });
  }

  /** Usually one list; several for a word that is glued together. */
  private sensesOf(word: string, guesses: boolean): readonly (readonly Sense[])[] {
    const key = guesses ? word : `=${word}`;
    const known = this.kept.get(key);
    if (known !== undefined) return known;
    const made = this.freshSenses(word, guesses);
    if (this.kept.size >= mostKept) this.kept.clear();
    this.kept.set(key, made);
    return made;
  }

  private freshSenses(word: string, guesses: boolean): readonly (readonly Sense[])[] {
    const known = this.exact.get(word) ?? this.stemmed.get(stemOf(word));
    // What is only a usual short form may as well be short for something else.
    if (known !== undefined)
      return [guesses && known.every(({ trust }) => trust < 0.9) ? merged(known, this.guessed(word)) : known];
    const glued = gluedParts(word, (piece, isLast) => this.knownPart(piece, isLast));
    if (glued !== null) return glued.map((part) => this.exact.get(part) ?? this.stemmed.get(part) ?? []);
    // A letter that is short for nothing is nobody's word.
    const itself = word.length > 1 ? [{ concept: `=${stemOf(word)}`, trust: 1 }] : [];
    return [guesses ? [...itself, ...this.guessed(word)] : itself];
  }

  private addConcept({ concept, words, short = [] }: Concept): void {
    const sense = { concept, trust: 1 };
    for (const [language, all] of Object.entries(words))
      for (const text of all)
        if (text.length === 1) this.addShort(text, concept);
        else this.addWords(text, sense, language === 'en' ? 1 : 0.9);
    for (const text of short) this.addShort(text, concept);
  }

  private addShort(text: string, concept: string): void {
    const trust = text.length === 1 ? letterTrust : shortTrust;
    this.add(this.exact, nameWords(text).join(' '), { concept, trust });
  }

  private addWords(text: string, sense: Sense, guess: number): void {
    const words = nameWords(text);
    // Short names leave out what says nothing: `niveau reception`.
    const telling = words.filter((word) => !this.empty.has(word));
    if (telling.length > 1) this.add(this.exact, telling.join(' '), sense);
    if (telling.length !== words.length || telling.length < 2) this.add(this.exact, words.join(' '), sense);
    this.add(this.stemmed, words.map(stemOf).join(' '), { ...sense, trust: stemTrust });
    const glued = words.join('');
    if (words.length > 1 && glued.length > 4) this.add(this.exact, glued, sense);
    this.guesses.add(words, { ...sense, trust: guess });
  }

  /** Adds what words say, with what that is near. */
  private add(map: Map<string, Sense[]>, key: string, sense: Sense): void {
    const all = map.get(key) ?? [];
    for (const one of this.withNear(sense)) {
      const at = all.findIndex(({ concept }) => concept === one.concept);
      if (at < 0) all.push(one);
      else if ((all[at]?.trust ?? 0) < one.trust) all[at] = one;
    }
    map.set(key, all);
  }

  /** A sense with those of what it is near. */
  private withNear(sense: Sense): readonly Sense[] {
    const near = this.concepts.get(sense.concept)?.near ?? [];
    return [sense, ...near.map((concept) => ({ concept, trust: 0.75 * sense.trust }))];
  }

  private guessed(word: string): readonly Sense[] {
    return this.guesses.of(word).flatMap((sense) => this.withNear(sense));
  }

  /** The known word that a part of a glued one is, perhaps with a letter or two that join it to the next. */
  private knownPart(text: string, isLast: boolean): string | null {
    if (this.exact.has(text)) return text;
    const stem = stemOf(text);
    if (text.length >= 5 && this.stemmed.has(stem)) return stem;
    if (isLast) return null;
    const bare = text.replace(/(?:s|es|n|en|er|e)$/, '');
    return bare.length >= 4 && this.exact.has(bare) ? bare : null;
  }
}

const stemTrust = 0.95;
/** A single letter is short for too much. */
const letterTrust = 0.3;
const shortTrust = 0.85;

function merged(known: readonly Sense[], guesses: readonly Sense[]): readonly Sense[] {
  const all = new Set(known.map(({ concept }) => concept));
  return [...known, ...guesses.filter(({ concept }) => !all.has(concept))];
}

const lexicons = new WeakMap<Catalog, Lexicon>();

/** That of a catalogue, made once. */
export function lexiconOf(catalog: Catalog): Lexicon {
  const known = lexicons.get(catalog);
  if (known !== undefined) return known;
  const made = new Lexicon(catalog.tradeWords);
  lexicons.set(catalog, made);
  return made;
}
