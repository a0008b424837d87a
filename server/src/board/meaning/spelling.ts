import type { FoundParameter } from '../../catalog/catalog';
import type { Value } from '../../craft/value';
import { curveValue, monotoneCurve } from '../../physics/monotone-curve';
import { anything } from '../../units/interval';
import { parseQuantity } from '../../units/quantity';
import type { SpellingManner } from '../profile/profile';
import { type Counting, countingOf, holdsNumbers, unitFor, withinNamed, withinStated } from './counting';
import type { Meaning } from './meanings';
import { NumberSpelling } from './number-spelling';
import { wordOfPart } from './part-parameter';
import { all, refused, type Spelled, texts, type Understood, unclear } from './spelled';

/** What one part of a meaning says for whichever value. */
interface PartSpelling {
  readonly spelled: ReadonlyMap<string, string>;
  readonly words: ReadonlyMap<string, string>;
  readonly counting: Counting;
}

/** Read once, for a script's every setting asks. */
interface OfMeaning {
  readonly parameter: FoundParameter['parameter'];
  readonly parts: readonly PartSpelling[];
}

const known = new WeakMap<Meaning, OfMeaning>();

function ofMeaning(
  meaning: Meaning,
  parameter: FoundParameter['parameter'],
  { decimal }: SpellingManner,
): OfMeaning {
  const before = known.get(meaning);
  if (before?.parameter === parameter) return before;
  const parts = meaning.parts.map(({ setting }): PartSpelling => {
    const words = Object.entries(setting.spelled ?? {});
    return {
      spelled: new Map(words),
      words: new Map(words.map(([word, spelled]) => [spelled, word])),
      counting: withinNamed(
        withinStated(countingOf(setting.counts, parameter), setting.range, decimal),
        setting.words,
        decimal,
      ),
    };
  });
  const made: OfMeaning = { parameter, parts };
  known.set(meaning, made);
  return made;
}

/** Turns values of one parameter into the board's spelling and back, as the rows of its profile say. */
export class Speller {
  private readonly parts: readonly PartSpelling[];

  constructor(
    private readonly meaning: Meaning,
    private readonly found: FoundParameter,
    private readonly manner: SpellingManner,
  ) {
    this.parts = ofMeaning(meaning, found.parameter, manner).parts;
  }

  /** The board's step of a part in its own numbers; null where it keeps what it is told. */
  grain(part: number): number | null {
    return this.part(part).counting.grain;
  }

  write(value: Value): Spelled {
    switch (value.kind) {
      case 'quantity':
      case 'count':
        return this.number(value.value, 0);
      case 'flag':
        return texts(this.flagText(value.value));
      case 'word':
      case 'date':
        return this.word(value.value, 0);
      case 'text':
      case 'bare':
        return this.quoted(value.value);
      case 'words':
        return this.words(value.value);
      case 'range':
        return this.ends(value.low, value.high);
      case 'place':
        return this.cells(value.row, value.column);
      case 'curve':
        return this.samples(value.points);
    }
  }

  /** What the board takes that is nearest to a value that it does not; null where nobody can tell. */
  nearest(value: Value): Value | null {
    if (value.kind !== 'quantity' && value.kind !== 'count') return null;
    const nearest = this.spelling(0).nearest(value.value);
    return nearest === null || (value.kind === 'count' && !Number.isInteger(nearest))
      ? null
      : { ...value, value: nearest };
  }

  read(written: readonly string[]): Understood {
    const { parameter } = this.found;
    const [first = ''] = written;
    switch (parameter.kind) {
      case 'quantity':
      case 'count':
        return this.readNumber(first, parameter.orWords?.map(({ name }) => name) ?? []);
      case 'flag':
        return this.readFlag(first);
      case 'word':
        return this.readWord(first);
      case 'date':
        return { kind: 'value', value: { kind: 'date', value: first } };
      case 'text':
      case 'bare':
        return this.readText(first);
      case 'words':
        return this.readWords(written);
      case 'range':
        return this.readEnds(written);
      case 'place':
        return this.readPlace(written);
      case 'curve':
        return this.readSamples(written);
    }
  }

  private part(index: number): PartSpelling {
    return this.parts[index] ?? nothingSaid;
  }

  /** Whether two texts of the board say the same of a part that is a number. */
  isSameNumber(part: number, one: string, other: string): boolean {
    return this.spelling(part).isSame(one, other);
  }

  /** What a text of the board says of a part that is a number, in SI; null for no number of it. */
  numberOf(part: number, text: string): number | null {
    return this.spelling(part).read(text);
  }

  /** A number as the board counts it, whatever its step and limits; null where it writes no such number. */
  shownNumber(part: number, base: number): string | null {
    return this.spelling(part).shown(base);
  }

  /** Our word in the board's spelling; null where it has no other for it. */
  shownWord(word: string): string | null {
    return this.part(0).spelled.get(word) ?? null;
  }

  /** Whether its parts are numbers, or come to some. */
  get isNumber(): boolean {
    return holdsNumbers(this.found.parameter) || this.meaning.by === 'numbers';
  }

  private spelling(part: number): NumberSpelling {
    return new NumberSpelling(this.part(part).counting, this.found, this.manner.decimal);
  }

  private number(base: number, part: number): Spelled {
    return this.spelling(part).write(base);
  }

  /** Ends that the board would write alike leave nothing between them, and no range. */
  private ends(low: number, high: number): Spelled {
    const spelled = all([low, high].map((end, part) => this.number(end, part)));
    if (spelled.kind === 'refused' || low === high) return spelled;
    const [first, second] = spelled.texts;
    return first === second
      ? refused(`the board would write both ends as ${first}; set them further apart`)
      : spelled;
  }

  private cells(row: number, column: number): Spelled {
    const told = this.meaning.by === 'cell' ? [row * this.columns + column] : [row, column];
    return told.every((one) => one < mostCells)
      ? all(told.map((one, part) => this.number(one, part)))
      : refused('no board has so many rows and columns');
  }

  private get columns(): number {
    const as = this.meaning.parts[0]?.setting.as;
    return typeof as === 'object' && 'cell' in as ? as.cell : 1;
  }

  /** On or off as a part that says so is spelled. */
  flagText(value: boolean, part = 0): string {
    const word = value ? 'on' : 'off';
    return this.part(part).spelled.get(word) ?? this.manner.flags[word];
  }

  private word(word: string, part: number): Spelled {
    const { spelled } = this.part(part);
    if (spelled.size === 0) return texts(word);
    const own = spelled.get(word);
    if (own !== undefined) return texts(own);
    return refused(`the board knows ${[...spelled.keys()].join(', ')}`);
  }

  private quoted(text: string): Spelled {
    const { quote } = this.manner;
    if (forbidden.test(text)) return refused('a text of one line is wanted, of plain characters');
    if (quote !== '') return texts(`${quote}${text.replaceAll(quote, quote + quote)}${quote}`);
    return text.trim() === text && text !== ''
      ? texts(text)
      : refused('the board takes no text that is empty, or begins or ends with a blank');
  }

  private words(words: readonly string[]): Spelled {
    switch (this.meaning.by) {
      case 'each':
        return this.eachWord(words);
      case 'numbers':
        return this.ofEachWord(words, (word, part) => {
          const at = words.indexOf(word);
          return at < 0 ? refused(`the board takes a number for ${word} as well`) : this.number(at + 1, part);
        });
      case 'flags':
        return this.ofEachWord(words, (word, part) => texts(this.flagText(words.includes(word), part)));
      default:
        return this.list(words);
    }
  }

  /** Where each setting says something of one word. */
  private ofEachWord(words: readonly string[], spell: (word: string, part: number) => Spelled): Spelled {
    const held = this.wordsHeld();
    const other = words.find((word) => !held.includes(word));
    return other === undefined ? all(held.map(spell)) : refused(`the board has no setting for ${other}`);
  }

  private wordsHeld(): readonly string[] {
    return this.meaning.parts.map(({ setting }) => wordOfPart(setting.as) ?? '');
  }

  private list(words: readonly string[]): Spelled {
    const { between, none } = this.manner.list;
    if (words.length === 0) return texts(none);
    const spelled = all(words.map((word) => this.word(word, 0)));
    return spelled.kind === 'refused' ? spelled : texts(spelled.texts.join(between));
  }

  private eachWord(words: readonly string[]): Spelled {
    const { length } = this.parts;
    if (words.length !== length) return refused(`the board takes ${length} of them`);
    return all(words.map((word, part) => this.word(word, part)));
  }

  private samples(points: readonly { readonly x: number; readonly y: number }[]): Spelled {
    const curve = monotoneCurve(points);
    return all(this.across().map((x, part) => this.number(curveValue(curve, x), part)));
  }

  private across(): readonly number[] {
    return this.meaning.parts.map(({ setting: { as } }) => {
      const at = typeof as === 'object' && 'at' in as ? as.at : '';
      return parseQuantity(at)?.value ?? Number.NaN;
    });
  }

  private readNumber(text: string, orWords: readonly string[]): Understood {
    const word = this.wordFor(text, 0);
    if (word !== null && orWords.includes(word))
      return { kind: 'value', value: { kind: 'word', value: word } };
    const base = this.numberOf(0, text);
    if (base === null) return unclear(0, 'a number is wanted');
    const { parameter } = this.found;
    if (parameter.kind === 'count') {
      return Number.isInteger(base)
        ? { kind: 'value', value: { kind: 'count', value: base } }
        : unclear(0, 'a whole number is wanted');
    }
    return { kind: 'value', value: { kind: 'quantity', value: base, unit: unitFor(parameter) } };
  }

  private readFlag(text: string): Understood {
    const value = this.flagIn(text, 0);
    return value === null ? this.wantedFlag(0) : { kind: 'value', value: { kind: 'flag', value } };
  }

  private flagIn(text: string, part: number): boolean | null {
    if (text === this.flagText(true, part)) return true;
    return text === this.flagText(false, part) ? false : null;
  }

  private wantedFlag(part: number): Understood {
    return unclear(part, `${this.flagText(true, part)} or ${this.flagText(false, part)} is wanted`);
  }

  private readWord(text: string): Understood {
    const word = this.wordFor(text, 0);
    if (word !== null) return { kind: 'value', value: { kind: 'word', value: word } };
    return unclear(0, this.wantedWords(0));
  }

  private wordFor(text: string, part: number): string | null {
    const { words } = this.part(part);
    if (words.size > 0) return words.get(text) ?? null;
    return wordText.test(text) ? text : null;
  }

  private wantedWords(part: number): string {
    const words = [...this.part(part).words.keys()].join(', ');
    return words === '' ? 'a word is wanted' : `one of ${words} is wanted`;
  }

  private readText(text: string): Understood {
    const { quote } = this.manner;
    const isQuoted = quote !== '' && text.length > 1 && text.startsWith(quote) && text.endsWith(quote);
    if (quote !== '' && !isQuoted) return unclear(0, `a text in ${quote} is wanted`);
    const value = isQuoted ? text.slice(1, -1).replaceAll(quote + quote, quote) : text;
    return forbidden.test(value)
      ? unclear(0, 'a text of plain characters is wanted')
      : { kind: 'value', value: { kind: 'text', value } };
  }

  private readWords(written: readonly string[]): Understood {
    if (this.meaning.by === 'numbers') return this.readNumbers(written);
    if (this.meaning.by === 'flags') return this.readFlags(written);
    const { between, none } = this.manner.list;
    const [first = ''] = written;
    const entries =
      this.meaning.by === 'each'
        ? written
        : first === none
          ? []
          : first.split(between).map((entry) => entry.trim());
    const words: string[] = [];
    for (const [index, entry] of entries.entries()) {
      const part = this.meaning.by === 'each' ? index : 0;
      const word = this.wordFor(entry, part);
      if (word === null) return unclear(part, this.wantedWords(part));
      words.push(word);
    }
    return { kind: 'value', value: { kind: 'words', value: words } };
  }

  /** Each word at its number; the numbers are those from 1 on, each once. */
  private readNumbers(written: readonly string[]): Understood {
    const words: string[] = [];
    for (const [part, word] of this.wordsHeld().entries()) {
      const number = this.numberOf(part, written[part] ?? '');
      if (number === null || !Number.isInteger(number) || number < 1 || number > written.length)
        return unclear(part, `a number from 1 to ${written.length} is wanted`);
      const other = words[number - 1];
      if (other !== undefined) return unclear(part, `${other} has that number already`);
      words[number - 1] = word;
    }
    return { kind: 'value', value: { kind: 'words', value: words } };
  }

  private readFlags(written: readonly string[]): Understood {
    const held = this.wordsHeld();
    const flags = held.map((_, part) => this.flagIn(written[part] ?? '', part));
    const bad = flags.indexOf(null);
    if (bad >= 0) return this.wantedFlag(bad);
    const words = held.filter((_, part) => flags[part] === true);
    return { kind: 'value', value: { kind: 'words', value: words } };
  }

  private readEnds(written: readonly string[]): Understood {
    const ends = written.map((text, part) => this.numberOf(part, text));
    const bad = ends.indexOf(null);
    if (bad >= 0) return unclear(bad, 'a number is wanted');
    const [low = 0, high = 0] = ends as number[];
    return { kind: 'value', value: { kind: 'range', low, high, unit: unitFor(this.found.parameter) } };
  }

  private readPlace(written: readonly string[]): Understood {
    const numbers = written.map((text, part) => cellOf(this.numberOf(part, text)));
    const bad = numbers.indexOf(null);
    if (bad >= 0) return unclear(bad, 'a whole number is wanted');
    const [first = 0, second = 0] = numbers as number[];
    const [row, column] =
      this.meaning.by === 'cell' ? [Math.floor(first / this.columns), first % this.columns] : [first, second];
    return { kind: 'value', value: { kind: 'place', row, column } };
  }

  private readSamples(written: readonly string[]): Understood {
    const values = written.map((text, part) => this.numberOf(part, text));
    const bad = values.indexOf(null);
    if (bad >= 0) return unclear(bad, 'a number is wanted');
    const points = this.across().map((x, index) => ({ x, y: (values as number[])[index] ?? 0 }));
    return { kind: 'value', value: { kind: 'curve', points } };
  }
}

const nothingSaid: PartSpelling = {
  spelled: new Map(),
  words: new Map(),
  counting: {
    unit: '',
    scale: 1,
    offset: 0,
    base: 10,
    behind: '',
    table: null,
    grain: null,
    ...anything,
    limitText: '',
    choices: null,
  },
};
/** Rows, columns and cells are read with four digits. */
const mostCells = 10_000;
const wordText = /^[A-Za-z0-9][A-Za-z0-9-]{0,60}$/;
/** What must never leave a line or turn its text around. */
export const forbidden = /[\p{Cc}\p{Zl}\p{Zp}\u200B-\u200F\u202A-\u202E\u2066-\u2069\uFEFF]/u;

function cellOf(number: number | null): number | null {
  return number !== null && Number.isInteger(number) && number >= 0 && number < mostCells ? number : null;
}
