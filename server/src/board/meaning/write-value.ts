import type { Value } from '../../craft/value';
import { curveValue, monotoneCurve } from '../../physics/monotone-curve';
import { forbidden } from './forbidden';
import { type MeaningSpelling, mostCells } from './meaning-spelling';
import { all, refused, type Spelled, texts } from './spelled';

/** A value in the board's spelling: a text for each part, or why the board takes no such value. */
export function writeValue(spelling: MeaningSpelling, value: Value): Spelled {
  switch (value.kind) {
    case 'quantity':
    case 'count':
      return writeNumber(spelling, value.value, 0);
    case 'flag':
      return texts(spelling.flagText(value.value));
    case 'word':
    case 'date':
      return writeWord(spelling, value.value, 0);
    case 'text':
    case 'bare':
      return writeText(spelling, value.value);
    case 'words':
      return writeWords(spelling, value.value);
    case 'range':
      return writeEnds(spelling, value.low, value.high);
    case 'place':
      return writeCells(spelling, value.row, value.column);
    case 'curve':
      return writeSamples(spelling, value.points);
  }
}

function writeNumber(spelling: MeaningSpelling, base: number, part: number): Spelled {
  return spelling.number(part).write(base);
}

/** Ends that the board would write alike leave nothing between them, and no range. */
function writeEnds(spelling: MeaningSpelling, low: number, high: number): Spelled {
  const spelled = all([low, high].map((end, part) => writeNumber(spelling, end, part)));
  if (spelled.kind === 'refused' || low === high) return spelled;
  const [first, second] = spelled.texts;
  return first === second
    ? refused(`the board would write both ends as ${first}; set them further apart`)
    : spelled;
}

function writeCells(spelling: MeaningSpelling, row: number, column: number): Spelled {
  const numbers = spelling.meaning.by === 'cell' ? [row * spelling.columns + column] : [row, column];
  return numbers.every((one) => one < mostCells)
    ? all(numbers.map((one, part) => writeNumber(spelling, one, part)))
    : refused('no board has so many rows and columns');
}

function writeWord(spelling: MeaningSpelling, word: string, part: number): Spelled {
  const { spelled } = spelling.part(part);
  if (spelled.size === 0) return texts(word);
  const own = spelled.get(word);
  if (own !== undefined) return texts(own);
  return refused(`the board knows ${[...spelled.keys()].join(', ')}`);
}

function writeText(spelling: MeaningSpelling, text: string): Spelled {
  const { quote } = spelling.manner;
  if (forbidden.test(text)) return refused('a text of one line is wanted, of plain characters');
  if (quote !== '') return texts(`${quote}${text.replaceAll(quote, quote + quote)}${quote}`);
  return text.trim() === text && text !== ''
    ? texts(text)
    : refused('the board takes no text that is empty, or begins or ends with a blank');
}

function writeWords(spelling: MeaningSpelling, words: readonly string[]): Spelled {
  switch (spelling.meaning.by) {
    case 'each':
      return writeEachWord(spelling, words);
    case 'numbers':
      return writeForEachWord(spelling, words, (word, part) => {
        const at = words.indexOf(word);
        return at < 0
          ? refused(`the board takes a number for ${word} as well`)
          : writeNumber(spelling, at + 1, part);
      });
    case 'flags':
      return writeForEachWord(spelling, words, (word, part) =>
        texts(spelling.flagText(words.includes(word), part)),
      );
    default:
      return writeList(spelling, words);
  }
}

/** Where each setting says something of one word. */
function writeForEachWord(
  spelling: MeaningSpelling,
  words: readonly string[],
  spell: (word: string, part: number) => Spelled,
): Spelled {
  const held = spelling.wordsHeld();
  const other = words.find((word) => !held.includes(word));
  return other === undefined ? all(held.map(spell)) : refused(`the board has no setting for ${other}`);
}

function writeList(spelling: MeaningSpelling, words: readonly string[]): Spelled {
  const { between, none } = spelling.manner.list;
  if (words.length === 0) return texts(none);
  const spelled = all(words.map((word) => writeWord(spelling, word, 0)));
  return spelled.kind === 'refused' ? spelled : texts(spelled.texts.join(between));
}

function writeEachWord(spelling: MeaningSpelling, words: readonly string[]): Spelled {
  const { length } = spelling.parts;
  if (words.length !== length) return refused(`the board takes ${length} of them`);
  return all(words.map((word, part) => writeWord(spelling, word, part)));
}

function writeSamples(
  spelling: MeaningSpelling,
  points: readonly { readonly x: number; readonly y: number }[],
): Spelled {
  const curve = monotoneCurve(points);
  return all(spelling.across().map((x, part) => writeNumber(spelling, curveValue(curve, x), part)));
}
