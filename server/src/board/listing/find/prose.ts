import { isSurelyValue } from '../forms/read-part';
import { isKnownUnit } from '../unit-words';
import { commentMark } from './comments';

/**
 * Whether a text is sentences that people write to each other, and no listing. Nearly any words can be read as names
 * with values, so this looks for what only sentences have: words that hold others together, in most lines and in ever
 * other ways, and next to no line with a name of its own or a value for sure.
 */
export function isRunningText(lines: readonly string[]): boolean {
  const all = lines.map((text) => text.trim()).filter((text) => text !== '');
  const said = all.filter((text) => commentMark(text) === null);
  const sentences = said.filter(isSentence);
  const clear = all.filter(isClear).length;
  return (
    sentences.length > 2 * clear &&
    clear <= Math.max(mostClear, sentences.length / 20) &&
    2 * wordCount(sentences) >= wordCount(said) &&
    !haveOneFrame(sentences.map(frameOf))
  );
}

/** So many lines of a text may look like settings by chance; of a long one a twentieth. */
const mostClear = 4;

/** Words that hold a sentence together in English, German and French, but for those below. */
const joining: ReadonlySet<string> = new Set(
  (
    'a an the this that these those it its i we you he she they me us them my our your his her their who which what ' +
    'and but because so than then there here with from by as about into over after before when where while how why ' +
    'have has had do does did will would can could should may might must been not no nor also just very ' +
    'der die das den dem des ein eine einen einem einer und aber weil ich wir er sie es mein unser nicht auch mit von ' +
    'zu zum zur bei nach aus auf wenn wie noch schon hat haben wird werden kann ' +
    'le la les un une du et mais parce que qui je nous vous il elle ils mon notre pas aussi avec dans sur pour ne ce'
  ).split(' '),
);

/** Such words that a listing may well have between a name and its value, line after line. */
const saying: ReadonlySet<string> = new Set(
  'is are was were be in of to at on for or set equals means ist sind war im an auf est sont de en sur'.split(
    ' ',
  ),
);

const word =
  /^["'(\u201c\u201e\u00ab]*(\p{L}+(?:['\u2019-]\p{L}+)*)["')\u201d\u201c\u00bb]*[,;:.!?\u2026]*$/u;
const leastWords = 4;

function wordsIn(text: string): readonly string[] {
  return text.split(/\s+/);
}

function wordCount(lines: readonly string[]): number {
  return lines.reduce((sum, text) => sum + wordsIn(text).length, 0);
}

/** Plain words, a fifth of which hold the others together. */
function isSentence(text: string): boolean {
  const words = wordsIn(text.replace(/^[-*\u2022] /, ''));
  if (words.length < leastWords || isClear(text)) return false;
  const plain = words.flatMap((one) => word.exec(one)?.[1]?.toLowerCase() ?? []);
  const holding = plain.filter((one) => joining.has(one) || saying.has(one));
  return (
    4 * plain.length >= 3 * words.length &&
    5 * holding.length >= words.length &&
    holding.some((one) => joining.has(one))
  );
}

/** Before a colon. It is counted apart: a pattern with the number in it takes seconds to be proved linear. */
const longestName = 40;

/** A name in one piece with marks in it, a mark that parts, columns, or a value where only a value stands. */
function isClear(text: string): boolean {
  const words = wordsIn(text);
  const [first = '', second = ''] = words;
  const [last = '', beforeLast = ''] = words.slice(-2).reverse();
  const isValue = (one: string) => isSurelyValue(one, '.');
  return (
    /\t| {2}|[^\s=]=|\s=\s|\|/.test(text) ||
    /[\p{L}\d][_/\d.][\p{L}\d]|\p{Ll}\p{Lu}/u.test(first) ||
    (/[^.!?:,]$/.test(second) && isValue(second)) ||
    (/[^.!?]$/.test(last) && (isValue(last) || (isValue(beforeLast) && isKnownUnit(last)))) ||
    (/^[^:.]+: *["'+-]?\d/.test(text) && text.indexOf(':') <= longestName)
  );
}

/** The words of a line that may stand between a name and its value. */
function frameOf(text: string): string {
  return wordsIn(text.toLowerCase())
    .filter((one) => saying.has(one))
    .join(' ');
}

const leastAlike = 3;

/** Whether most lines say what they say in one way, as a listing in words does. */
function haveOneFrame(frames: readonly string[]): boolean {
  const counts = new Map<string, number>();
  for (const frame of frames) if (frame !== '') counts.set(frame, (counts.get(frame) ?? 0) + 1);
  const most = Math.max(0, ...counts.values());
  return most >= leastAlike && 2 * most >= frames.length;
}
