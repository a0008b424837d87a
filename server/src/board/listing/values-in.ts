import type { DecimalMark } from './number-look';
import { closing, trimmedOfSpace } from './text/characters';
import { lookOf } from './value-look';

/** One of several values in a token, with its place in that. */
export interface ValueIn {
  readonly text: string;
  readonly start: number;
  readonly end: number;
}

/** What stands between the values of a token; a blank where it looks like no list. */
export function betweenIn(value: string, mark: DecimalMark): string {
  const look = lookOf(value, mark);
  return look.kind === 'list' || look.kind === 'tuple' ? look.between : ' ';
}

/** The values in a token, without the brackets around them all. `between`: what parts them; blanks around it count for nothing. */
export function valuesIn(token: string, between: string): readonly ValueIn[] {
  const close = closing.get(token[0] ?? '');
  const isBracketed = close !== undefined && token.length > 1 && token.endsWith(close);
  const [from, to] = isBracketed ? [1, token.length - 1] : [0, token.length];
  const mark = between.trim();
  const values: ValueIn[] = [];
  let start = from;
  for (let at = from; at <= to; at += 1) {
    const isEnd = at === to || (mark === '' ? /\s/.test(token[at] ?? '') : token.startsWith(mark, at));
    if (!isEnd) continue;
    const [first, last] = trimmedOfSpace(token, start, at);
    if (mark !== '' || first < last) values.push({ text: token.slice(first, last), start: first, end: last });
    start = at + Math.max(1, mark.length);
    at = start - 1;
  }
  return values;
}
