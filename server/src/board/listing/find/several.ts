import { isPlainName } from '../forms/parts-of-line';
import { isSurelyValue, partingMarks } from '../forms/read-part';
import { isBlank } from '../text/characters';
import type { Sample } from './sample';

/** Lines that hold several settings with this between names and values: at least a share of all, or none. */
export function severalIn(literal: string, sample: readonly Sample[]): readonly Sample[] {
  const core = literal.trim();
  if (literal !== ' ' && core === '') return [];
  const leads = core === '' ? leadsOfPairs(sample) : null;
  const several = sample.filter((line) => (leads === null ? hasTwice(line.text, core) : leads.has(line)));
  return several.length < shareOfSeveral * sample.length ? [] : several;
}

const shareOfSeveral = 0.3;

function hasTwice(text: string, core: string): boolean {
  const first = text.indexOf(core, 1);
  let end = first + core.length;
  // A row of dots is one, however long it is.
  while (text[end] === core.at(-1)) end += 1;
  return first > 0 && text.indexOf(core, end) > 0;
}

/** Whether a line surely holds several settings: each value such as no name is, and names between them. */
export function holdsSeveral(text: string, core: '=' | ':' | ' '): boolean {
  if (core === ' ') {
    const words = text.split(/\s+/);
    return !words.some((word) => partingMarks.has(word)) && pairsIn(words) !== null;
  }
  const pieces = text.split(core).map((piece) => piece.trim());
  const [, ...rest] = pieces;
  const last = rest.pop();
  return (
    last !== undefined &&
    rest.length > 0 &&
    isSurelyValue(last, '.') &&
    !/\s/.test(last) &&
    rest.every((piece) => {
      const [, value = '', name = ''] = /^(\S+?)[,;|/]?\s+(?:[|/]\s)?(\S+)$/.exec(piece) ?? [];
      return isSurelyValue(value, '.') && isPlainName(name);
    })
  );
}

const mostLeading = 2;
const leastPairs = 2;

/** Behind how many words names and values stand in turn, each value such as no name is; null where they do not. */
function pairsIn(words: readonly string[]): number | null {
  for (let lead = 0; lead <= mostLeading; lead += 1) if (shareOfValues(words.slice(lead)) === 1) return lead;
  return null;
}

/** Of names and values in turn, how many values are such as no name is; 0 where no name and value stand in turn. */
function shareOfValues(words: readonly string[]): number {
  if (words.length < 2 * leastPairs || words.length % 2 !== 0) return 0;
  const values = words.filter((_, at) => at % 2 === 1);
  const areNames = words.every((word, at) => at % 2 === 1 || isPlainName(word));
  return areNames ? values.filter((word) => isSurelyValue(word, '.')).length / values.length : 0;
}

/** For lines of names and values in turn, behind how many words they begin: values may be words where the names come back. */
function leadsOfPairs(sample: readonly Sample[]): ReadonlyMap<Sample, number> {
  const found = new Map<Sample, number>();
  const alike = new Map<string, (readonly [line: Sample, lead: number])[]>();
  for (const line of sample) {
    const words = line.text.split(/\s+/, mostWords + 1);
    if (words.length > mostWords) continue;
    const sure = pairsIn(words);
    if (sure !== null) found.set(line, sure);
    for (let lead = 0; lead <= mostLeading && sure === null; lead += 1) {
      const rest = words.slice(lead);
      if (shareOfValues(rest) < 0.5) continue;
      const key = JSON.stringify([lead, ...rest.filter((_, at) => at % 2 === 0)]);
      alike.set(key, [...(alike.get(key) ?? []), [line, lead]]);
    }
  }
  for (const lines of alike.values())
    for (const [line, lead] of lines) if (lines.length > 1 && !found.has(line)) found.set(line, lead);
  for (const line of countedAmong([...found.keys()])) found.delete(line);
  return found;
}

/** `port 1 rx 8`, `port 2 aux 9`: lines that count what they begin with, with too little behind it to be several settings. */
export function countedAmong(lines: readonly Sample[]): readonly Sample[] {
  const short = lines.flatMap((line) => {
    const words = line.text.split(/\s+/, 2 * leastPairs + 1);
    return words.length === 2 * leastPairs ? [{ line, words }] : [];
  });
  const first = new Map<string, typeof short>();
  for (const one of short) {
    const [word = ''] = one.words;
    first.set(word, [...(first.get(word) ?? []), one]);
  }
  return [...first.values()].filter(isCount).flatMap((some) => some.map(({ line }) => line));
}

/** Whether the second words are numbers one after the other, from a small one on. */
function isCount(lines: readonly { readonly words: readonly string[] }[]): boolean {
  const numbers = lines.map(({ words }) =>
    /^\d{1,3}$/.test(words[1] ?? '') ? Number(words[1]) : Number.NaN,
  );
  const [start = Number.NaN] = numbers;
  return lines.length > 1 && start <= 1 && numbers.every((number, at) => number === start + at);
}

const mostWords = 64;

/** What may stand between several settings of a line. */
const marksBetween = [';', '&', '|', ',', '/', '\t', '  ', ' '] as const;

/** What may stand between the settings of lines that hold several. */
export function betweensOf(literal: string, several: readonly Sample[]): readonly string[] {
  const core = literal.trim();
  if (several.length === 0) return [];
  if (core === '') return [marksBetween.find((mark) => partsPairs(mark, several)) ?? ' '];
  return marksBetween.filter(
    (mark) =>
      mark !== core &&
      !(mark === ' ' && literal !== core) &&
      several.filter(({ text }) => text.includes(mark)).length >= shareOfSeveral * several.length,
  );
}

/** Whether lines are names and values with nothing but blanks between them, and this mark between two settings. */
function partsPairs(mark: string, several: readonly Sample[]): boolean {
  if (mark.trim() === '') return false;
  return several.every(({ text }) => {
    const pieces = text.split(mark).filter((piece, at, all) => piece.trim() !== '' || at < all.length - 1);
    return pieces.length > 1 && pieces.every((piece) => isPair(piece.trim()));
  });
}

/** A name and behind a blank its value, which no name is. */
export function isPair(text: string): boolean {
  const words = text.split(/\s+/, 3);
  const [name = '', value = ''] = words;
  return words.length === 2 && isPlainName(name) && isSurelyValue(value, '.');
}

/** What may part a group from the setting behind it. */
export const leadMarks = [': ', ' > ', ' | ', '|', ' - ', '> ', '\t', '  '] as const;
export const shareOfLead = 0.8;

/** What may part a group from several settings behind it, before and behind it. */
const leads = [
  ...[...leadMarks, ' = ', '=', ':'].map((mark) => ['', mark] as const),
  ['[', '] '],
  ['<', '> '],
] as const;

/** What may lead the settings of lines that hold several, as starts of templates. */
export function leadsOfSeveral(literal: string, several: readonly Sample[]): readonly string[] {
  const core = literal.trim();
  if (several.length === 0) return [];
  const least = shareOfLead * several.length;
  const marked = leads
    .filter(([open, mark]) => {
      const led = several.filter(({ text }) => {
        const at = text.indexOf(mark);
        return (
          at > 0 &&
          text.startsWith(open) &&
          isBetween(text, core, at, at + mark.length) &&
          (mark.trim() !== core || !text.includes(mark, at + mark.length))
        );
      });
      return (mark.trim() !== core || (mark.endsWith(' ') && literal === core)) && led.length >= least;
    })
    .map(([open, mark]) => `${open}{group}${mark}`);
  return [...marked, ...(core === '' ? leadOfPairs(several) : leadOfWords(core, several))];
}

/** Whether what parts names from values stands behind a mark, and not before it. */
function isBetween(text: string, core: string, start: number, end: number): boolean {
  if (core === '') return /\s/.test(text.slice(end).trim());
  return !text.slice(0, start).includes(core) && text.indexOf(core, end) > end;
}

/** Where words stand before the first name, the group is all but the last of what stands before the first value. */
function leadOfWords(core: string, several: readonly Sample[]): readonly string[] {
  if (marksBetween.some((mark) => mark === core)) return [];
  const led = several.filter(({ text }) => {
    const before = text.slice(0, text.indexOf(core, 1)).trimEnd();
    return [...before].some(isBlank) && isPlainStart(before);
  });
  return led.length >= shareOfLead * several.length ? ['{group} '] : [];
}

function isPlainStart(text: string): boolean {
  return /^[\p{L}\p{N}_@.-]+(?:\s+[\p{L}\p{N}_@.-]+)*$/u.test(text);
}

/** Words in front of names and values in turn: a group, or a group and the number of a member. */
function leadOfPairs(several: readonly Sample[]): readonly string[] {
  const leads = leadsOfPairs(several);
  const lines = several.map((line) => ({ words: line.text.split(/\s+/), lead: leads.get(line) }));
  const isMost = (lead: number) =>
    lines.filter((line) => line.lead === lead && line.words.slice(0, lead).every(isLead)).length >=
    shareOfLead * lines.length;
  if (isMost(1)) return ['{group} '];
  // What begins every line is no name of a setting, but what its number is of.
  const isOne = lines.length > 1 && new Set(lines.map(({ words }) => words[0])).size === 1;
  const areNumbers = new Set(lines.map(({ words }) => words[1])).size === lines.length;
  const areLong = lines.every(({ words }) => words.length > 2 * leastPairs);
  return isMost(2) || (isMost(0) && isOne && areNumbers && areLong) ? ['{group} {member} '] : [];
}

/** Whether a word ends with no mark that would part it from what follows. */
function isLead(word: string): boolean {
  return /[\p{L}\p{N}_]$/u.test(word);
}
