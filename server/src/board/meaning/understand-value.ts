import { unitFor } from './counting';
import { forbidden } from './forbidden';
import { type MeaningSpelling, mostCells } from './meaning-spelling';
import { type Understood, unclear } from './spelled';

/** What texts of the board mean, one for each part, or which of them is unclear. */
export function understandValue(spelling: MeaningSpelling, written: readonly string[]): Understood {
  const { parameter } = spelling.found;
  const [first = ''] = written;
  switch (parameter.kind) {
    case 'quantity':
    case 'count':
      return readNumber(spelling, first, parameter.orWords?.map(({ name }) => name) ?? []);
    case 'flag':
      return readFlag(spelling, first);
    case 'word':
      return readWord(spelling, first);
    case 'date':
      return { kind: 'value', value: { kind: 'date', value: first } };
    case 'text':
    case 'bare':
      return readText(spelling, first);
    case 'words':
      return readWords(spelling, written);
    case 'range':
      return readEnds(spelling, written);
    case 'place':
      return readPlace(spelling, written);
    case 'curve':
      return readSamples(spelling, written);
  }
}

function readNumber(spelling: MeaningSpelling, text: string, orWords: readonly string[]): Understood {
  const word = wordFor(spelling, text, 0);
  if (word !== null && orWords.includes(word)) return { kind: 'value', value: { kind: 'word', value: word } };
  const base = spelling.number(0).read(text);
  if (base === null) return unclear(0, 'a number is wanted');
  const { parameter } = spelling.found;
  if (parameter.kind === 'count') {
    return Number.isInteger(base)
      ? { kind: 'value', value: { kind: 'count', value: base } }
      : unclear(0, 'a whole number is wanted');
  }
  return { kind: 'value', value: { kind: 'quantity', value: base, unit: unitFor(parameter) } };
}

function readFlag(spelling: MeaningSpelling, text: string): Understood {
  const value = flagIn(spelling, text, 0);
  return value === null ? wantedFlag(spelling, 0) : { kind: 'value', value: { kind: 'flag', value } };
}

function flagIn(spelling: MeaningSpelling, text: string, part: number): boolean | null {
  if (text === spelling.flagText(true, part)) return true;
  return text === spelling.flagText(false, part) ? false : null;
}

function wantedFlag(spelling: MeaningSpelling, part: number): Understood {
  return unclear(part, `${spelling.flagText(true, part)} or ${spelling.flagText(false, part)} is wanted`);
}

function readWord(spelling: MeaningSpelling, text: string): Understood {
  const word = wordFor(spelling, text, 0);
  if (word !== null) return { kind: 'value', value: { kind: 'word', value: word } };
  return unclear(0, wantedWords(spelling, 0));
}

function wordFor(spelling: MeaningSpelling, text: string, part: number): string | null {
  const { words } = spelling.part(part);
  if (words.size > 0) return words.get(text) ?? null;
  return wordText.test(text) ? text : null;
}

function wantedWords(spelling: MeaningSpelling, part: number): string {
  const words = [...spelling.part(part).words.keys()].join(', ');
  return words === '' ? 'a word is wanted' : `one of ${words} is wanted`;
}

function readText(spelling: MeaningSpelling, text: string): Understood {
  const { quote } = spelling.manner;
  const isQuoted = quote !== '' && text.length > 1 && text.startsWith(quote) && text.endsWith(quote);
  if (quote !== '' && !isQuoted) return unclear(0, `a text in ${quote} is wanted`);
  const value = isQuoted ? text.slice(1, -1).replaceAll(quote + quote, quote) : text;
  return forbidden.test(value)
    ? unclear(0, 'a text of plain characters is wanted')
    : { kind: 'value', value: { kind: 'text', value } };
}

function readWords(spelling: MeaningSpelling, written: readonly string[]): Understood {
  if (spelling.meaning.by === 'numbers') return readNumbers(spelling, written);
  if (spelling.meaning.by === 'flags') return readFlags(spelling, written);
  const { between, none } = spelling.manner.list;
  const [first = ''] = written;
  const entries =
    spelling.meaning.by === 'each'
      ? written
      : first === none
        ? []
        : first.split(between).map((entry) => entry.trim());
  const words: string[] = [];
  for (const [index, entry] of entries.entries()) {
    const part = spelling.meaning.by === 'each' ? index : 0;
    const word = wordFor(spelling, entry, part);
    if (word === null) return unclear(part, wantedWords(spelling, part));
    words.push(word);
  }
  return { kind: 'value', value: { kind: 'words', value: words } };
}

/** Each word at its number; the numbers are those from 1 on, each once. */
function readNumbers(spelling: MeaningSpelling, written: readonly string[]): Understood {
  const words: string[] = [];
  for (const [part, word] of spelling.wordsHeld().entries()) {
    const number = spelling.number(part).read(written[part] ?? '');
    if (number === null || !Number.isInteger(number) || number < 1 || number > written.length)
      return unclear(part, `a number from 1 to ${written.length} is wanted`);
    const other = words[number - 1];
    if (other !== undefined) return unclear(part, `${other} has that number already`);
    words[number - 1] = word;
  }
  return { kind: 'value', value: { kind: 'words', value: words } };
}

function readFlags(spelling: MeaningSpelling, written: readonly string[]): Understood {
  const held = spelling.wordsHeld();
  const flags = held.map((_, part) => flagIn(spelling, written[part] ?? '', part));
  const bad = flags.indexOf(null);
  if (bad >= 0) return wantedFlag(spelling, bad);
  const words = held.filter((_, part) => flags[part] === true);
  return { kind: 'value', value: { kind: 'words', value: words } };
}

function readEnds(spelling: MeaningSpelling, written: readonly string[]): Understood {
  const ends = written.map((text, part) => spelling.number(part).read(text));
  const bad = ends.indexOf(null);
  if (bad >= 0) return unclear(bad, 'a number is wanted');
  const [low = 0, high = 0] = ends as number[];
  return { kind: 'value', value: { kind: 'range', low, high, unit: unitFor(spelling.found.parameter) } };
}

function readPlace(spelling: MeaningSpelling, written: readonly string[]): Understood {
  const numbers = written.map((text, part) => cellOf(spelling.number(part).read(text)));
  const bad = numbers.indexOf(null);
  if (bad >= 0) return unclear(bad, 'a whole number is wanted');
  const [first = 0, second = 0] = numbers as number[];
  const [row, column] =
    spelling.meaning.by === 'cell'
      ? [Math.floor(first / spelling.columns), first % spelling.columns]
      : [first, second];
  return { kind: 'value', value: { kind: 'place', row, column } };
}

function readSamples(spelling: MeaningSpelling, written: readonly string[]): Understood {
  const values = written.map((text, part) => spelling.number(part).read(text));
  const bad = values.indexOf(null);
  if (bad >= 0) return unclear(bad, 'a number is wanted');
  const points = spelling.across().map((x, index) => ({ x, y: (values as number[])[index] ?? 0 }));
  return { kind: 'value', value: { kind: 'curve', points } };
}

const wordText = /^[A-Za-z0-9][A-Za-z0-9-]{0,60}$/;

function cellOf(number: number | null): number | null {
  return number !== null && Number.isInteger(number) && number >= 0 && number < mostCells ? number : null;
}
