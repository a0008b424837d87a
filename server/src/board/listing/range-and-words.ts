import type { DecimalMark } from './number-look';
import { textWithoutQuotes } from './text/characters';
import { lookOf } from './value-look';

/** What may stand between the ends of a range, the surest first. */
const betweenEnds = [
  '...',
  '..',
  '\u2026',
  ' - ',
  '\u2013',
  '\u2014',
  ' to ',
  ' bis ',
  ' \u00e0 ',
  ' through ',
  '-',
  ':',
  ',',
  '/',
  '<',
];
const longestRange = 100;

/** `0..10`, `0 - 10 Hz`, `-5 to 5`: the lower end first. */
export function rangeIn(
  text: string,
  mark: DecimalMark,
): { readonly low: string; readonly high: string; readonly unit: string | null } | null {
  if (text.length > longestRange) return null;
  for (const between of betweenEnds) {
    const at = text.indexOf(between, 1);
    if (at < 0) continue;
    const low = amountOf(text.slice(0, at), mark);
    const high = amountOf(text.slice(at + between.length), mark);
    if (low === null || high === null) continue;
    if (!(low.value < high.value) || (between === '/' && isScale(low.value, high.value))) return null;
    return { low: low.text, high: high.text, unit: high.unit ?? low.unit };
  }
  return null;
}

/** `1/100` or `1/1024` says how a number counts, and no range; `1/16` may be one, of channels. */
function isScale(low: number, high: number): boolean {
  const isBinary = high >= leastBinary && Number.isInteger(Math.log2(high));
  return low === 1 && (isBinary || Number.isInteger(Math.log10(high)));
}

const leastBinary = 32;

/** A number, perhaps with a unit. */
function amountOf(
  text: string,
  mark: DecimalMark,
): { readonly text: string; readonly value: number; readonly unit: string | null } | null {
  const amount = text.trim();
  const look = lookOf(amount, mark);
  if (look.kind === 'number') return { text: amount, value: look.value, unit: null };
  if (look.kind !== 'measure') return null;
  const written = amount.slice(0, amount.length - look.unit.length - look.gap.length);
  return { text: written, value: look.number.value, unit: look.unit };
}

const choice = /^[\p{L}\p{N}_@.:%+-]{1,40}$/u;
const mostWords = 64;

/** `a|b|c`, `a, b, c`, `a / b`, `a or b`: what a value may be. */
export function wordsIn(text: string): readonly string[] | null {
  const mark = ['|', ',', '/', ';', ' or ', ' oder ', ' ou '].find((one) => text.includes(one));
  if (mark === undefined) return null;
  const words = text
    .split(mark)
    .flatMap((part) => part.split(/\s(?:or|oder|ou|and|und|et)\s/))
    .map((word) => textWithoutQuotes(word.trim()));
  if (words.length < 2 || words.length > mostWords || !words.every((word) => choice.test(word))) return null;
  // Two numbers are the ends of a range, unless they fall or a bar parts them.
  const areWords = mark === '|' || words.length > 2 || rangeIn(words.join('..'), '.') === null;
  return areWords || words.some((word) => /\p{L}/u.test(word)) ? words : null;
}

/**
 * `NONE FIRST SECOND`, with nothing but blanks between: words only where their column says so and the value is one of
 * them, for a sentence looks the same.
 */
export function wordsApart(text: string, value: string): readonly string[] | null {
  const words = text.trim().split(/\s+/);
  const areWords = words.length > 1 && words.length <= mostWords && words.every((word) => choice.test(word));
  return areWords && words.includes(textWithoutQuotes(value)) ? words : null;
}
