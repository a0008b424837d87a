import type { DecimalMark } from '../number-look';
import { rangeIn, wordsIn } from '../range-and-words';
import { isKnownUnit } from '../unit-words';
import { type KeyKind, keyOf } from '../value-keys';
import { isAmount, lookOf, numberOf } from '../value-look';

/** `min 0 max 10`, `def=5`, `one of a, b`: words behind a value that say what the next one is. */
export function keysIn(values: readonly string[], mark: DecimalMark): readonly string[] {
  const counts = new Map<string, number>();
  const sure = new Set<string>();
  const all = values.map((value) => keysOf(value, mark).filter((key) => canSay(key, value, mark)));
  const limited = areLimits(values, all, mark);
  for (const found of all) {
    const keys = found.filter(({ kind }) => limited || (kind !== 'low' && kind !== 'high'));
    for (const { template } of keys) counts.set(template, (counts.get(template) ?? 0) + 1);
    // Both ends together, or a key whose value fits no other, say it even once.
    const kinds = new Set(keys.map(({ kind }) => kind));
    const isPair = kinds.has('low') && kinds.has('high');
    for (const { template, kind } of keys) if (isPair || surely.has(kind)) sure.add(template);
  }
  const least = Math.max(2, 0.15 * values.length);
  const found = [...counts].filter(([template, count]) => count >= least || sure.has(template));
  return found.map(([template]) => template).slice(0, 12);
}

/** Only of a number can there be limits: `channel 5 from 1700 to 2100` is all value. */
function canSay({ kind, at }: RemarkKey, value: string, mark: DecimalMark): boolean {
  const isLimit = kind === 'low' || kind === 'high' || kind === 'range';
  return !isLimit || isAmount(value.slice(0, at).split(/\s/)[0] ?? '', mark);
}

/** Whether most values lie between the two ends beside them; else those are a part of the value: `7 from 1500 to 2100`. */
function areLimits(
  values: readonly string[],
  keys: readonly (readonly RemarkKey[])[],
  mark: DecimalMark,
): boolean {
  const places = values.flatMap((value, index) => {
    const endOf = (kind: RemarkKey['kind']) => keys[index]?.find((key) => key.kind === kind)?.rest;
    const [amount, low, high] = [value, endOf('low'), endOf('high')].map((text) => firstNumber(text, mark));
    if (amount === undefined || low === undefined || high === undefined) return [];
    return [low <= amount && amount <= high];
  });
  return 2 * places.filter((isBetween) => isBetween).length >= places.length;
}

/** The number that a text begins with. */
function firstNumber(text: string | undefined, mark: DecimalMark): number | undefined {
  return numberOf(lookOf((text?.split(/\s/)[0] ?? '').replace(/,$/, ''), mark))?.value;
}

const surely: ReadonlySet<string> = new Set(['default', 'range', 'words']);

interface RemarkKey {
  readonly template: string;
  readonly kind: KeyKind;
  /** Where it begins in the value. */
  readonly at: number;
  /** What follows it. */
  readonly rest: string;
}

/** Of a longer value only so much is looked at. */
export const longestLooked = 400;

function keysOf(value: string, mark: DecimalMark): readonly RemarkKey[] {
  const found: RemarkKey[] = [];
  const word = /\s(\p{L}{1,20})(\s?[:=])?(\s*)(\S+)/gu;
  const text = value.slice(0, longestLooked);
  for (let one = word.exec(text); one !== null; one = word.exec(text)) {
    word.lastIndex = one.index + 1;
    const key = keyAt(one, text);
    if (key !== null && fitsKey(key.kind, key.rest, mark)) found.push(key);
  }
  return found;
}

/** The key of one word, or of two such as `one of`, that stands there with what follows it. */
function keyAt(one: RegExpExecArray, text: string): RemarkKey | null {
  const [whole, first = '', joint = '', gap = '', next = ''] = one;
  const end = one.index + whole.length;
  const [, second = '', mark = ''] = /^(of|von)([:=]?)$/.exec(next) ?? [];
  const both = joint === '' && second !== '' ? keyOf(`${first} ${second}`) : null;
  if (both !== null) {
    const template = ` ${first} ${second}${mark} {${both}}`;
    return { template, kind: both, at: one.index, rest: text.slice(end).trimStart() };
  }
  const kind = keyOf(first);
  if (kind === null || (joint === '' && gap === '')) return null;
  const template = ` ${first}${joint}${gap === '' ? '' : ' '}{${kind}}`;
  return { template, kind, at: one.index, rest: text.slice(end - next.length) };
}

/** Whether what follows a key is what it says. */
function fitsKey(kind: KeyKind, rest: string, mark: DecimalMark): boolean {
  const [first = '', second = '', third = ''] = rest.split(/\s+/);
  if (kind === 'range')
    return rangeIn(first, mark) !== null || rangeIn([first, second, third].join(' '), mark) !== null;
  if (kind === 'words') return first.endsWith(',') || wordsIn(first) !== null;
  if (kind === 'unit') return isKnownUnit(first);
  return kind === 'default' || isAmount(first.replace(/,$/, ''), mark);
}

export function withoutKeys(value: string, keyed: readonly string[]): string {
  const places = keyed
    .map((template) => value.indexOf(template.slice(0, template.indexOf('{')).trimEnd()))
    .filter((at) => at > 0);
  if (places.length === 0) return value;
  return value
    .slice(0, Math.min(...places))
    .replace(/[,;]$/, '')
    .trimEnd();
}
