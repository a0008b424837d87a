import { findUnitSymbol } from '../../units/unit-table';
import { type DecimalMark, numberLook } from './number-look';
import { textWithoutQuotes } from './text/characters';
import { lookOf } from './value-look';

/** What a remark beside a value says of it. */
export interface Remark {
  readonly range: { readonly low: string; readonly high: string } | null;
  readonly words: readonly string[] | null;
  readonly default: string | null;
  readonly unit: string | null;
  /** Whether nothing else stands there. */
  readonly isAll: boolean;
}

const longestRemark = 1000;

/** Reads what a remark says of range, allowed words, default and unit, in the words that boards say it with. */
export function saidIn(remark: string, mark: DecimalMark): Remark {
  const said = new RemarkReader(mark);
  const text = remark.trim();
  if (text === '' || text.length > longestRemark) return said.result(false);
  if (said.take(text)) return said.result(true);
  const clauses = text.split(/[;,]\s|\s\/\s|\s\|\s/).map((clause) => clause.trim());
  const taken = clauses.map((clause) => clause !== '' && said.take(clause));
  // A remark of which one part says nothing known is told whole, with what was found in it.
  return said.result(taken.every((one) => one));
}

/** What a word says that the value behind it is, by the field of a template that takes it. */
export type KeyKind = 'low' | 'high' | 'default' | 'unit' | 'range' | 'words';

const keys: ReadonlyMap<string, KeyKind> = new Map([
  ...['min', 'least', 'low', 'lowest', 'lower', 'minimum', 'from', 'von', 'ab', 'mindestens', 'de'].map(
    (word) => [word, 'low'] as const,
  ),
  ...['max', 'most', 'high', 'highest', 'upper', 'maximum', 'to', 'bis', 'h\u00f6chstens', '\u00e0'].map(
    (word) => [word, 'high'] as const,
  ),
  ...[
    'default',
    'def',
    'dflt',
    'factory',
    'std',
    'standard',
    'normal',
    'usual',
    'usually',
    'vorgabe',
    'werk',
    'werkseinstellung',
    'standardwert',
    'd\u00e9faut',
    'defaut',
    'init',
    'initial',
    'delivered',
    'shipped',
    'stock',
    'usine',
    'ausgeliefert',
  ].map((word) => [word, 'default'] as const),
  ...['unit', 'units', 'einheit', 'unit\u00e9', 'in', 'en'].map((word) => [word, 'unit'] as const),
  ...['range', 'limits', 'bereich', 'plage', 'grenzen', 'limites', 'between', 'zwischen', 'entre'].map(
    (word) => [word, 'range'] as const,
  ),
  ...[
    'one of',
    'any of',
    'allowed',
    'choices',
    'choice',
    'options',
    'values',
    'words',
    'either',
    'eines von',
    'einer von',
    'eins von',
    'erlaubt',
    'auswahl',
    'm\u00f6glich',
    'entweder',
    'un de',
    'parmi',
    'choix',
    'permis',
    'valeurs',
  ].map((word) => [word, 'words'] as const),
]);

/** What a word before a value says that the value is: `max` is the most. */
export function keyOf(word: string): KeyKind | null {
  return keys.get(word.toLowerCase()) ?? null;
}

interface Keyed {
  readonly key: KeyKind;
  readonly rest: string;
}

/** The key that a clause begins with, of one word or two, and what follows it. */
function keyBefore(clause: string): Keyed | null {
  const text = clause.startsWith('par ') ? clause.slice('par '.length) : clause;
  const words = text.split(/[\s:=]/, 2);
  for (const name of [words.join(' '), words[0] ?? '']) {
    const key = keyOf(name);
    if (key === null || !text.startsWith(name)) continue;
    const rest = text.slice(name.length).trimStart();
    const said = /^[:=]/.test(rest) ? rest.slice(1).trimStart() : rest;
    if (said !== '') return { key, rest: said };
  }
  return null;
}

class RemarkReader {
  private low: string | null = null;
  private high: string | null = null;
  private words: readonly string[] | null = null;
  private default: string | null = null;
  private unit: string | null = null;

  constructor(private readonly mark: DecimalMark) {}

  result(isAll: boolean): Remark {
    const { low, high } = this;
    const range = low !== null && high !== null ? { low, high } : null;
    return { range, words: this.words, default: this.default, unit: this.unit, isAll };
  }

  /** Whether a clause was understood; it is then kept, and nothing of it otherwise. */
  take(clause: string): boolean {
    const before = { ...this };
    const isTaken = this.takeAny(clause);
    if (!isTaken) Object.assign(this, before);
    return isTaken;
  }

  private takeAny(clause: string): boolean {
    return (
      this.takeRange(clause) || this.takeUnit(clause) || this.takeKeyed(clause) || this.takeWords(clause)
    );
  }

  private takeRange(clause: string): boolean {
    const range = rangeIn(clause, this.mark);
    if (range === null || this.low !== null || this.high !== null) return false;
    this.low = range.low;
    this.high = range.high;
    this.unit ??= range.unit;
    return true;
  }

  private takeUnit(clause: string): boolean {
    if (this.unit !== null || !isKnownUnit(clause)) return false;
    this.unit = clause;
    return true;
  }

  /** `default: 5`, `min 0`, `one of: a, b`; several may follow each other: `min 0 max 10`. */
  private takeKeyed(clause: string): boolean {
    const found = keyBefore(clause);
    if (found === null) return false;
    const { key, rest } = found;
    if (key === 'words') return this.takeWords(rest);
    if (key === 'range') return this.takeRange(rest) || this.takeEnds(rest);
    if (key === 'unit') return this.takeUnit(rest);
    const [value = '', ...more] = rest.split(' ').filter((word) => word !== '');
    if (more.length > 0 && !this.takeRest(more)) return false;
    return this.keep(key, textWithoutQuotes(value.endsWith(',') ? value.slice(0, -1) : value));
  }

  /** What follows the value of a key: its unit, or another key. */
  private takeRest(more: readonly string[]): boolean {
    const text = more.join(' ');
    return this.takeUnit(text) || this.takeKeyed(text);
  }

  private takeEnds(rest: string): boolean {
    const joint = [' and ', ' und ', ' et ', ', '].find((one) => rest.includes(one));
    return joint !== undefined && this.takeRange(rest.replace(joint, ' .. '));
  }

  private keep(key: 'low' | 'high' | 'default', value: string): boolean {
    if (this[key] !== null || value === '') return false;
    if (key !== 'default' && numberLook(value, this.mark) === null) return false;
    this[key] = value;
    return true;
  }

  private takeWords(clause: string): boolean {
    const words = wordsIn(clause);
    if (this.words !== null || words === null) return false;
    this.words = words;
    return true;
  }
}

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

/** Symbols that boards and programs write beside those that a script knows. */
const more: ReadonlySet<string> = new Set([
  ...[
    'kB',
    'KB',
    'MB',
    'GB',
    'TB',
    'KiB',
    'MiB',
    'GiB',
    'TiB',
    'B',
    'bytes',
    'byte',
    'bits',
    'bit',
    'bps',
    'kbps',
  ],
  ...['baud', 'Bd', 'sec', 'secs', 'second', 'seconds', 'msec', 'usec', 'minutes', 'hours', 'days', 'ticks'],
  ...['cells', 'turns', 'steps', 'counts', 'pct', 'percent', 'ppm', 'px', 'dots', 'kHz', 'kbit/s', 'Mbit/s'],
  ...[
    'Sekunden',
    'Grad',
    'Schritte',
    'secondes',
    'degrees',
    'deg',
    'dps',
    'gauss',
    'mG',
    'g',
    '\u00b0',
    '\u2030',
  ],
  ...['\u00b0C', '\u00b0/s', '1/s', '\u03a9', 'k\u03a9', 'U/min', 'rad', 'rpm', 'RPM'],
]);

export function isKnownUnit(text: string): boolean {
  if (text.length > 24 || text === '') return false;
  if (more.has(text) || findUnitSymbol(text) !== undefined) return true;
  const parts = text.split('/');
  return parts.length === 2 && parts.every((part) => isUnitPart(part.replace(/^\((.*)\)$/, '$1')));
}

/** Whether a word behind a number could be a unit, known or not. */
export function couldBeUnit(word: string): boolean {
  return /^(?:[%\u00b0\u2030]|\p{L})[\p{L}%\u00b0/^23\u00b2\u00b3*]{0,11}$/u.test(word);
}

function isUnitPart(text: string): boolean {
  const symbol = text.replace(/(?:\^?[23]|[\u00b2\u00b3])$/, '');
  return symbol !== '' && (more.has(symbol) || findUnitSymbol(symbol) !== undefined);
}
