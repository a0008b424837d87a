import { isSurelyValue } from '../forms/read-part';
import { isEndWord } from './closers';
import type { Sample } from './sample';

/** What a board says before and after its settings: lines of plain words, where the settings are written otherwise. */
export interface Sentences {
  readonly opening: readonly Sample[];
  readonly closing: readonly Sample[];
}

/** What a line alone does not tell. */
export interface Layout {
  readonly indentOf: (line: Sample) => number;
  /** Whether a blank line stands before it. */
  readonly isApart: (line: Sample) => boolean;
}

const mostOpening = 4;
const mostClosing = 2;
const leastBetween = 2;

/** Finds the sentences at the edges of a listing. */
export function sentencesIn(lines: readonly Sample[], layout: Layout): Sentences {
  const plain = lines.map(({ text }) => isPlain(text));
  const head = plain.indexOf(false);
  const end = plain.lastIndexOf(false) + 1;
  const between = lines.slice(Math.max(0, head), end);
  const others = between.filter(({ text }) => isPlain(text) && text.includes(' ')).length;
  if (head < 0 || head > mostOpening || others > 0 || between.length < leastBetween)
    return { opening: longLines(lines, layout), closing: [] };
  const [opening, closing] = [lines.slice(0, head), lines.slice(end)];
  if (areBrackets(opening, closing) && !between.some(({ text }) => isPlain(text)))
    return { opening, closing };
  const areColumns = between.every(({ text }) => /\t| {2}/.test(text));
  const isAround = (line: Sample) =>
    layout.indentOf(line) <= Math.min(...between.map(layout.indentOf)) && !sharesWord(line, between);
  return {
    opening: areSentences(opening) && opening.every(isAround) ? opening : [],
    closing:
      closing.length <= mostClosing &&
      closing.every((line) => isAround(line) && isClosing(line.text, areColumns))
        ? closing
        : [],
  };
}

const beginWords: ReadonlySet<string> = new Set([
  'begin',
  'start',
  'beginn',
  'anfang',
  'debut',
  'd\u00e9but',
]);

/** `begin` alone in its line, which may be lacking, and `end`, perhaps with more behind it. */
function areBrackets(opening: readonly Sample[], closing: readonly Sample[]): boolean {
  return (
    opening.length <= 1 &&
    closing.length === 1 &&
    opening.every(({ text }) => beginWords.has(text.toLowerCase())) &&
    closing.every(({ text }) => isEndWord(text.split(' ')[0] ?? ''))
  );
}

const longest = 120;
const plainWord = /^[\p{L}\p{N}][\p{L}\p{N}.'\u2019-]*[,!?]?$/u;

/** Words with one blank between them, none of them in quotes or brackets, no mark but at the end of one. */
function isPlain(text: string): boolean {
  if (text.length > longest) return false;
  // A question mark behind the first word may part a name from its value.
  return text.split(' ').every((word, at) => plainWord.test(word) && (at > 0 || !word.endsWith('?')));
}

/** A word alone may be a heading, and two of which the second can only be a value are a setting. */
function areSentences(lines: readonly Sample[]): boolean {
  const hasLong = lines.some(({ text }) => isLong(text, 3));
  return lines.every(({ text }) => {
    const words = text.split(' ');
    return words.length > 1 && (hasLong || !isSurelyValue(words[1] ?? '', '.'));
  });
}

/** Whether at least so many words of a line are no values. */
function isLong(text: string, least: number): boolean {
  return text.split(' ').filter((word) => !isSurelyValue(word, '.')).length >= least;
}

/** A word alone may be a setting, but not where all stand in columns. */
function isClosing(text: string, areColumns: boolean): boolean {
  const words = text.split(' ');
  return (areColumns || words.length > 1) && !isSurelyValue(words.at(-1) ?? '', '.');
}

/** Whether a word comes back in many of these lines: it says that something is so. */
function sharesWord({ text }: Sample, lines: readonly Sample[]): boolean {
  const words = new Set(text.split(' ').slice(1));
  return (
    2 * lines.filter((line) => line.text.split(/\s+/).some((word) => words.has(word))).length > lines.length
  );
}

const leastWords = 4;
const shareOfShort = 0.8;

/**
 * Where all lines are plain words: long sentences at the start, and what stands around them, where most others are
 * short. They begin with a capital that the others lack, or a blank line ends them.
 */
function longLines(lines: readonly Sample[], { isApart }: Layout): readonly Sample[] {
  const first = lines.slice(0, mostOpening);
  const last = first.findLastIndex(({ text }) => isPlain(text) && isLong(text, leastWords));
  const blank = lines.slice(0, mostOpening + 1).findIndex((line, at) => at > last && isApart(line));
  const opening = lines.slice(0, blank < 0 ? last + 1 : blank);
  const after = lines.slice(opening.length);
  const short = after.filter(({ text }) => text.split(/\s+/).length < leastWords).length;
  if (last < 0 || after.length < leastBetween || short < shareOfShort * after.length) return [];
  const isCapital = ({ text }: Sample) => /^\p{Lu}/u.test(text);
  const isSaid = blank >= 0 || (opening.every(isCapital) && !after.some(isCapital));
  return isSaid && opening.every(({ text }) => isPlain(text)) ? opening : [];
}
