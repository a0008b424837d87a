import { type DecimalMark, type NumberLook, numberLook } from './number-look';
import { closing } from './text/characters';

/** How a value is written: what stands there, not what it means. */
export type Look =
  | { readonly kind: 'empty' }
  | NumberLook
  /** A number with its unit: `47 Hz`, `5%`; `gap` stands between them. */
  | { readonly kind: 'measure'; readonly number: NumberLook; readonly gap: string; readonly unit: string }
  /** One of a pair of words, as this value writes its case. */
  | { readonly kind: 'flag'; readonly pair: readonly [on: string, off: string]; readonly isOn: boolean }
  | { readonly kind: 'word' }
  | { readonly kind: 'list'; readonly between: string; readonly items: readonly string[] }
  /** A list in brackets. */
  | {
      readonly kind: 'tuple';
      readonly open: string;
      readonly close: string;
      readonly between: string;
      readonly items: readonly string[];
    }
  | { readonly kind: 'text' };

/** Pairs of words that boards and people say on and off with. */
export const flagPairs: readonly (readonly [on: string, off: string])[] = [
  ['on', 'off'],
  ['yes', 'no'],
  ['true', 'false'],
  ['enabled', 'disabled'],
  ['enable', 'disable'],
  ['active', 'inactive'],
  ['lit', 'dark'],
  ['an', 'aus'],
  ['ein', 'aus'],
  ['ja', 'nein'],
  ['wahr', 'falsch'],
  ['aktiv', 'inaktiv'],
  ['oui', 'non'],
  ['vrai', 'faux'],
  ['actif', 'inactif'],
  ['marche', 'arr\u00eat'],
];

const pairOfWord: ReadonlyMap<string, readonly [on: string, off: string]> = new Map(
  [...flagPairs].reverse().flatMap((pair) => pair.map((word) => [word, pair] as const)),
);

const longest = 2000;
/** A number with its unit, `4.5 V` or `4.5 /s`. */
const measure =
  /^(\S{1,60}?)([ \u00a0\u202f]?)((?:[%\u2030\u00b0]|\p{L}|\/(?=(?:s|min)(?![\p{L}\p{N}])))[\p{L}\p{N}%\u00b0/^*\u00b7()\u207b\u00b9\u00b2\u00b3-]{0,23})$/u;
const word = /^[\p{L}\p{N}_@./:+#~$&!?*%\u00b0\\^|<>=-]+$/u;

/** What a value looks like. `mark`: what stands before decimals in its listing. */
export function lookOf(value: string, mark: DecimalMark = '.'): Look {
  if (value === '') return { kind: 'empty' };
  if (value.length > longest) return { kind: 'text' };
  return (
    numberLook(value, mark) ??
    flagLook(value) ??
    measureLook(value, mark) ??
    tupleLook(value) ??
    listLook(value) ??
    (word.test(value) ? { kind: 'word' } : { kind: 'text' })
  );
}

/** The number of a look, with its unit or without; null where it is none. */
export function numberOf(look: Look): NumberLook | null {
  if (look.kind === 'measure') return look.number;
  return look.kind === 'number' ? look : null;
}

/** Whether a text is a number, with its unit or without. */
export function isAmount(text: string, mark: DecimalMark): boolean {
  return numberOf(lookOf(text, mark)) !== null;
}

/** Digits and letters of base 16 behind a nought, without a sign that says so: `012C` is no 12 C. */
export function isBareHex(value: string): boolean {
  return value.length > 2 && /^0(?:[\dA-F]+|[\da-f]+)$/.test(value) && /[a-f]/i.test(value);
}

/** The number that a text is, without its unit; null where it is none, or has more digits than a number holds. */
export function amountIn(text: string, mark: DecimalMark): number | null {
  const number = numberOf(lookOf(text, mark));
  return number === null || Number.isNaN(number.value) ? null : number.value;
}

function flagLook(value: string): Look | null {
  const lower = value.toLowerCase();
  const pair = pairOfWord.get(lower);
  return pair === undefined ? null : { kind: 'flag', pair, isOn: pair[0] === lower };
}

function measureLook(value: string, mark: DecimalMark): Look | null {
  if (value.length > 90 || isBareHex(value)) return null;
  const [, amount = '', gap = '', unit = ''] = measure.exec(value) ?? [];
  const number = numberLook(amount, mark);
  // What is all digits and letters of base 16 is no amount with a unit, and neither is `1e5`.
  return number === null ? null : { kind: 'measure', number, gap, unit };
}

function tupleLook(value: string): Look | null {
  const close = closing.get(value[0] ?? '');
  if (close === undefined || !value.endsWith(close) || value.length < 2) return null;
  const inner = value.slice(1, -1);
  const list = listLook(inner.trim());
  const items = list?.kind === 'list' ? list.items : inner.trim() === '' ? [] : [inner.trim()];
  return {
    kind: 'tuple',
    open: value[0] ?? '',
    close,
    between: list?.kind === 'list' ? list.between : ', ',
    items,
  };
}

/** What may stand between the entries of a list, the strongest first. */
const listMarks = [';', '|', ',', '+', '\t', ' '] as const;

/** What stands between two ends, `1700..2100`, `1700 - 2100`, and between three gains or more, `45/80/30`. */
const marksOfNumbers: readonly (readonly [mark: string, fewest: number, most: number])[] = [
  ['..', 2, 2],
  ['\u2013', 2, 2],
  ['-', 2, 2],
  [' to ', 2, 2],
  ['/', 3, 16],
];

/** Numbers with a mark between them that parts no words; ends in their order, for `2026-11` is none. */
function numbersLook(value: string): Look | null {
  for (const [mark, fewest, most] of marksOfNumbers) {
    const parts = value.split(mark);
    if (parts.length < fewest || parts.length > most) continue;
    const items = parts.map((part) => part.trim());
    const numbers = items.map((item) => numberLook(item)?.value ?? Number.NaN);
    const [low = 0, high = 0] = numbers;
    if (numbers.some(Number.isNaN) || (most === 2 && low >= high)) continue;
    return { kind: 'list', between: betweenParts(parts, mark), items };
  }
  return null;
}

/** The mark between two parts, with the blanks that stand around it. */
function betweenParts([first = '', second = '']: readonly string[], mark: string): string {
  const before = first.slice(first.trimEnd().length);
  return before + mark + second.slice(0, second.length - second.trimStart().length);
}

function listLook(value: string): Look | null {
  const numbers = numbersLook(value);
  if (numbers !== null) return numbers;
  const mark = listMarks.find((one) => value.includes(one));
  if (mark === undefined) return null;
  const parts = value.split(mark === ' ' ? / +/ : mark);
  const items = parts.map((part) => part.trim());
  if (items.includes('') || items.some((item) => / /.test(item) && mark !== ';' && mark !== '|')) return null;
  // Words with blanks between them are a text; numbers are a list.
  if (mark === ' ' && !items.every((item) => numberLook(item) !== null)) return null;
  return { kind: 'list', between: betweenParts(parts, mark), items };
}

/**
 * Whether two values are the same. By number only if both are numbers of the same base without leading zeros, of at
 * most 15 digits; within half of `step` where there is one. Else exactly.
 */
export function sameValue(one: string, other: string, step?: number): boolean {
  if (one === other) return true;
  const [first, second] = [numberLook(one), numberLook(other)];
  if (first === null || second === null || first.base !== second.base) return false;
  if (first.hasLeadingZeros || second.hasLeadingZeros) return false;
  const distance = Math.abs(first.value - second.value);
  // Steps are rarely exact in binary: what is half a step off but for the last bits is within it.
  return step === undefined ? distance === 0 : distance <= step / 2 + 1e-9 * step;
}
