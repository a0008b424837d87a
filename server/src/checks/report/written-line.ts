import type { CraftView } from '../../craft/view';
import type { RuleLine } from '../rule';
import type { Stop } from './finding';

/** A text that a fix writes, with the places that the pilot is to type over. */
export interface NewText {
  readonly text: string;
  readonly stops: readonly Stop[];
}

/** Several one behind the other. */
export function joinedTexts(texts: readonly (NewText | string)[]): NewText {
  let text = '';
  const stops: Stop[] = [];
  for (const one of texts) {
    const at = text.length;
    const part = typeof one === 'string' ? { text: one, stops: [] } : one;
    text += part.text;
    stops.push(...part.stops.map((stop) => ({ ...stop, start: stop.start + at, end: stop.end + at })));
  }
  return { text, stops };
}

/** The value of a line; to type over where the pilot must look at it. A number is typed over without its unit. */
export function valueToWrite(view: CraftView, { set, to, look }: RuleLine): NewText {
  if (look === undefined) return { text: to, stops: [] };
  const [, number] = /^(-?\d\S*) [^\s,]+$/.exec(to) ?? [];
  const end = number === undefined || number.includes('..') ? to.length : number.length;
  return { text: to, stops: [{ start: 0, end, choices: wordsFirst(view, set, to) }] };
}

/** `  # to check: count the magnets`, for a line without a comment; '' where nothing is to be said of it. */
export function lineComment({ look, source }: RuleLine): string {
  const said = [
    ...(look === undefined ? [] : [`to check: ${look}`]),
    ...(source === undefined ? [] : [source]),
  ];
  return said.length === 0 ? '' : `  # ${said.join('; ')}`;
}

/**
 * A comment with another source in it: what a pilot wrote stays, and what an earlier source said goes. Sources begin
 * with the same word.
 */
export function withSource(comment: string, source: string): string {
  const [word = ''] = source.split(' ', 1);
  const kept = comment
    .replace(/^#\s*/, '')
    .split('; ')
    .filter((part) => !part.startsWith(`${word} `) && part.trim() !== '');
  return `# ${[...kept, source].join('; ')}`;
}

const mostChoices = 20;

function wordsFirst(view: CraftView, path: string, word: string): readonly string[] {
  const words = wordsOf(view, path);
  return words.includes(word) && words.length <= mostChoices
    ? [word, ...words.filter((one) => one !== word)]
    : [];
}

function wordsOf({ craft, catalog }: CraftView, path: string): readonly string[] {
  const found = catalog.parameter(path);
  if (found === undefined) return [];
  return found.parameter.kind === 'flag' ? ['on', 'off'] : (craft.words(found) ?? []);
}
