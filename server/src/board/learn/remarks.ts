import type { Look } from './looks';

/** What a listing says of a setting behind its value. */
export interface Remark {
  /** The least and the most that it may be, as the listing writes them. */
  readonly range: readonly [string, string] | null;
  readonly words: readonly string[] | null;
  /** The rest, for a reader. */
  readonly text: string;
}

/** What may begin a remark, in the order in which they are looked for. */
const remarkMarks = [' #', ' //', ' --', ' [', ' (', ' {', ' ;', ' ~', ' |', ' *'] as const;

/** Cuts a value from what is said behind it. */
export function cutRemark(
  rest: string,
  quote: boolean,
): { readonly value: string; readonly mark: string | null; readonly remark: string } {
  const from = quote ? Math.max(0, rest.indexOf(rest[0] ?? '"', 1)) : 0;
  let at = -1;
  let found: string | null = null;
  for (const mark of remarkMarks) {
    const place = rest.indexOf(mark, from);
    if (place > 0 && (at < 0 || place < at)) [at, found] = [place, mark];
  }
  if (found === null) return { value: rest, mark: null, remark: '' };
  return { value: rest.slice(0, at).trimEnd(), mark: found, remark: rest.slice(at + found.length).trim() };
}

const pair = /([+-]?\d{1,12}(?:\.\d{1,9})?)\s*(?:\.\.|to|<|-|…|,|\/)\s*([+-]?\d{1,12}(?:\.\d{1,9})?)/;

/** Reads what a remark says of range and words. */
export function readRemark(text: string, look: Look): Remark {
  const inner = text.replace(/[)\]}|*]+$/, '').trim();
  const numbers = look === 'number' ? pair.exec(inner.slice(0, 200)) : null;
  const [, low, high] = numbers ?? [];
  const range =
    low !== undefined && high !== undefined && Number(low) < Number(high) ? ([low, high] as const) : null;
  return { range, words: range === null ? wordsIn(inner) : null, text: inner };
}

/** `one of: a, b, c`, `a|b|c`, `a / b / c`: two words or more. */
function wordsIn(text: string): readonly string[] | null {
  const list = text.slice(0, 400).split(':').at(-1) ?? '';
  const mark = ['|', '/', ','].find((one) => list.includes(one));
  if (mark === undefined) return null;
  const words = list.split(mark).map((word) => word.trim());
  const isList =
    words.length >= 2 &&
    words.length <= 40 &&
    words.every((word) => /^[A-Za-z][A-Za-z0-9-]{0,30}$/.test(word));
  return isList ? words : null;
}
