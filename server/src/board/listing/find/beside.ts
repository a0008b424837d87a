import { type DecimalMark, numberLook } from '../number-look';
import { isKnownUnit, keyOf, rangeIn, saidIn, wordsIn } from '../stated';
import { closing, isBlank, quotedAt, trimmed } from '../text/characters';
import { commentMark } from './comments';

/** The forms of what stands beside the values of a listing, as templates. */
export function besideIn(
  values: readonly string[],
  comments: readonly string[],
  mark: DecimalMark,
): readonly string[] {
  const remarks = remarkMarks(values, comments);
  const bare = values.map((value) => withoutRemark(value, remarks));
  const said = bare.map((value) => saidBehind(value, mark));
  const found = counted(said.flatMap(({ all }) => all));
  const templates = [...found].filter(([, count]) => isEnough(count, values.length)).map(([one]) => one);
  const plain = said.map(({ value }) => value);
  return [
    ...remarks.map((one) => ` ${one}{remark}`),
    ...templates.sort(byKind).slice(0, mostTemplates),
    ...unitsIn(plain, mark),
  ];
}

const mostTemplates = 20;

/** Brackets first, then words that say what follows, then what follows without either. */
function byKind(one: string, other: string): number {
  const rank = (template: string) =>
    template === plainRange ? 2 : /\p{L}+[:=]? ?\{/u.test(template) ? 1 : 0;
  return rank(one) - rank(other);
}

const usualMarks = ['#', '//', ';', '--', '!', '%', '~', '|', '*', '<-', '\u2190'] as const;
/** These begin a remark even where the listing has one only; the others where many lines have one. */
const sureMarks: ReadonlySet<string> = new Set(['#', '//']);
const leastShare = 0.3;
/** What stands behind a mark that parts settings. */
const nextSetting = /^\s+[\p{L}\p{N}_.@-]+\s?[=:]/u;

function remarkMarks(values: readonly string[], comments: readonly string[]): readonly string[] {
  const marks = [...new Set([...comments.filter((mark) => commentMark(mark) !== null), ...usualMarks])];
  return marks.filter((mark) => {
    const marked = values.filter((value) => placeOf(value, mark) > 0);
    if (marked.length === 0) return false;
    const further = marked.filter((value) =>
      nextSetting.test(value.slice(placeOf(value, mark) + mark.length)),
    );
    if (2 * further.length >= marked.length && !sureMarks.has(mark)) return false;
    const isUsual = sureMarks.has(mark) || comments.includes(mark);
    return (
      isUsual || (marked.length >= 2 && marked.length >= leastShare * values.length) || endsAll(marked, mark)
    );
  });
}

/** Whether a semicolon stands apart behind whole values, with words behind it. */
function endsAll(values: readonly string[], mark: string): boolean {
  return (
    mark === ';' &&
    values.every((value) => {
      const at = placeOf(value, mark);
      return isWhole(value.slice(0, at).trimEnd()) && /^\s+\p{L}/u.test(value.slice(at + 1));
    })
  );
}

/** One word, or a text in quotes. */
function isWhole(value: string): boolean {
  return !/\s/.test(value) || quotedAt(value, 0)?.after === value.length;
}

/** Where a mark stands behind a value, between blanks and outside of quotes; -1 where it does not. */
function placeOf(value: string, mark: string): number {
  let at = value.indexOf(mark, quotedAt(value, 0)?.after ?? 1);
  while (at > 0) {
    if (isBlank(value[at - 1]) && isBlank(value[at + mark.length])) return at;
    at = value.indexOf(mark, at + 1);
  }
  return -1;
}

function withoutRemark(value: string, marks: readonly string[]): string {
  const places = marks.map((mark) => placeOf(value, mark)).filter((at) => at > 0);
  return places.length === 0 ? value : value.slice(0, Math.min(...places)).trimEnd();
}

/** Something said behind a value, as a template. */
interface SaidBehind {
  readonly template: string;
  /** What stands before it. */
  readonly value: string;
  /** Whether it can hardly be a part of the value. */
  readonly isSure: boolean;
}

const mostSaid = 6;

/** All that is said behind a value, from the last on, and the value alone. */
function saidBehind(
  text: string,
  mark: DecimalMark,
): { readonly value: string; readonly all: readonly SaidBehind[] } {
  const all: SaidBehind[] = [];
  let value = text.slice(0, longestValue);
  while (all.length < mostSaid) {
    const last = bracketSaid(value, mark) ?? keySaid(value, mark) ?? rangeSaid(value, mark);
    if (last === null) break;
    all.push(last);
    value = last.value.replace(/[,;]$/, '').trimEnd();
  }
  return { value, all };
}

const longestValue = 400;

interface Count {
  readonly sure: number;
  readonly all: number;
}

function counted(said: readonly SaidBehind[]): ReadonlyMap<string, Count> {
  const counts = new Map<string, Count>();
  for (const { template, isSure } of said) {
    const { sure, all } = counts.get(template) ?? { sure: 0, all: 0 };
    counts.set(template, { sure: sure + (isSure ? 1 : 0), all: all + 1 });
  }
  return counts;
}

const shareOfAny = 0.8;
const leastOfAny = 3;

/** By what is said, or because nearly every value has it. */
function isEnough({ sure, all }: Count, values: number): boolean {
  return (sure > 0 && 2 * sure >= all) || (all >= leastOfAny && all >= shareOfAny * values);
}

/** The bracket that ends a value, with a value before it. */
function bracketSaid(value: string, mark: DecimalMark): SaidBehind | null {
  const close = value.at(-1) ?? '';
  const open = [...closing].find(([, closer]) => closer === close)?.[0];
  if (open === undefined) return null;
  let depth = 0;
  for (let at = value.length - 1; at > 0; at -= 1) {
    if (value[at] === close) depth += 1;
    else if (value[at] === open) depth -= 1;
    if (depth > 0) continue;
    const before = value.slice(0, at).trimEnd();
    if (before === '') return null;
    const isTight = !isBlank(value[at - 1]);
    // Right behind a word, brackets are part of it: `all(2)`.
    if (isTight && !/\d[%\p{L}]{0,3}$/u.test(before)) return null;
    const inner = value.slice(at + 1, -1).trim();
    const template = `${isTight ? '' : ' '}${open}{remark}${close}`;
    return { template, value: before, isSure: saysOf(inner, before, mark) };
  }
  return null;
}

function saysOf(inner: string, value: string, mark: DecimalMark): boolean {
  const said = saidIn(inner, mark);
  if (said.range !== null) return isAmount(value, mark);
  if (said.words !== null)
    return said.words.includes(wordOf(value)) || inner.includes('|') || /:/.test(inner);
  return said.default !== null || (said.unit !== null && numberLook(value, mark) !== null);
}

/** Whether a value begins with a number, perhaps with its unit. */
function isAmount(value: string, mark: DecimalMark): boolean {
  const [first = ''] = value.split(/\s/);
  return numberLook(first, mark) !== null || /^[+-]?\d[\d.,]*[%\p{L}\u00b0]/u.test(first);
}

function wordOf(value: string): string {
  return value.split(/\s/)[0] ?? '';
}

const fieldOf = {
  low: 'low',
  high: 'high',
  default: 'default',
  unit: 'unit',
  range: 'range',
  words: 'words',
} as const;

/** `min 0`, `def=5`, `one of a, b` at the end of a value: words that say what follows them. */
function keySaid(value: string, mark: DecimalMark): SaidBehind | null {
  const places = [...value.matchAll(/(?<=\s)\p{L}{1,20}(?: \p{L}{1,5})?[:=]?/gu)].slice(-mostKeys);
  for (const place of places.reverse()) {
    const [whole, key] = keyAt(place[0]);
    if (key === null) continue;
    const rest = value.slice(place.index + whole.length);
    const isJoined = /[:=]$/.test(whole);
    if (!isJoined && !isBlank(rest[0])) continue;
    const before = value.slice(0, place.index).trimEnd();
    const said = rest.trim();
    if (said === '' || !fitsKey(key, said, mark)) continue;
    const template = ` ${whole}${isBlank(rest[0]) ? ' ' : ''}{${fieldOf[key]}}`;
    return { template, value: before, isSure: isSureOf(key, said, before, mark) };
  }
  return null;
}

const mostKeys = 8;

/** A key of two words or of one, with the mark behind it. */
function keyAt(text: string): readonly [whole: string, key: ReturnType<typeof keyOf>] {
  const both = keyOf(text.replace(/[:=]$/, ''));
  if (both !== null) return [text, both];
  const [first = ''] = /^\p{L}+[:=]?/u.exec(text) ?? [];
  return [first, keyOf(first.replace(/[:=]$/, ''))];
}

type Key = NonNullable<ReturnType<typeof keyOf>>;

function fitsKey(key: Key, said: string, mark: DecimalMark): boolean {
  if (key === 'range') return rangeIn(said, mark) !== null;
  if (key === 'words') return wordsIn(said) !== null;
  return key !== 'unit' && isWhole(said);
}

function isSureOf(key: Key, said: string, value: string, mark: DecimalMark): boolean {
  if (key === 'default') return value !== '';
  if (key === 'words') return wordsIn(said)?.includes(wordOf(value)) === true;
  return isAmount(value, mark) && (key === 'range' || numberLook(said, mark) !== null);
}

const plainRange = ' {range}';

/** ` 0..10`: a range that stands behind a number without anything around it. */
function rangeSaid(value: string, mark: DecimalMark): SaidBehind | null {
  const found = /\s(\S{1,40}(?: (?:\.\.|\.\.\.|\u2026) \S{1,40})?)$/.exec(value);
  const text = found?.[1] ?? '';
  if (!/\.\.|\u2026|\d-\d/.test(text) || rangeIn(text, mark) === null) return null;
  const before = value.slice(0, value.length - text.length).trimEnd();
  return isAmount(before, mark)
    ? { template: plainRange, value: before, isSure: /\.\.|\u2026/.test(text) }
    : null;
}

/** ` {unit}`: known units, or a word that comes back, behind single numbers. */
function unitsIn(values: readonly string[], mark: DecimalMark): readonly string[] {
  const counts = new Map<string, number>();
  for (const value of values) {
    const [start, end] = trimmed(value);
    const words = value.slice(start, end).split(/\s+/);
    const [amount = '', unit = ''] = words.slice(-2);
    if (words.length < 2 || words.length > 4 || numberLook(amount, mark) === null) continue;
    if (/^[%\u00b0\u2030\p{L}][\p{L}%\u00b0/^23\u00b2\u00b3*]{0,11}$/u.test(unit))
      counts.set(unit, (counts.get(unit) ?? 0) + 1);
  }
  const isUnit = [...counts].some(([unit, count]) => isKnownUnit(unit) || count >= 3);
  return isUnit ? [' {unit}'] : [];
}
