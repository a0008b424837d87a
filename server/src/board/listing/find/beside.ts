import { type DecimalMark, numberLook } from '../number-look';
import { isKnownUnit, keyOf, rangeIn, saidIn } from '../stated';
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
  const brackets = bracketsIn(bare, mark);
  const inner = bare.map((value) => withoutBrackets(value, brackets));
  const keyed = keysIn(inner);
  const plain = inner.map((value) => withoutKeys(value, keyed));
  return [
    ...remarks.map((one) => ` ${one}{remark}`),
    ...brackets.map(({ open, close, isTight }) => `${isTight ? '' : ' '}${open}{remark}${close}`),
    ...keyed,
    ...rangesIn(plain, mark),
    ...unitsIn(plain, mark),
  ];
}

const usualMarks = ['#', '//', ';', '--', '!', '%', '~', '|', '*', '<-', '\u2190'] as const;
/** These begin a remark even where the listing has one only; the others where many lines have one. */
const sureMarks: ReadonlySet<string> = new Set(['#', '//']);
const leastShare = 0.3;

function remarkMarks(values: readonly string[], comments: readonly string[]): readonly string[] {
  const marks = [...new Set([...comments.filter((mark) => commentMark(mark) !== null), ...usualMarks])];
  return marks.filter((mark) => {
    const places = values.map((value) => placeOf(value, ` ${mark} `)).filter((at) => at > 0).length;
    if (places === 0) return false;
    return (
      sureMarks.has(mark) || comments.includes(mark) || (places >= 2 && places >= leastShare * values.length)
    );
  });
}

/** Where a mark stands behind a value, outside of quotes; -1 where it does not. */
function placeOf(value: string, mark: string): number {
  const quoted = quotedAt(value, 0);
  return value.indexOf(mark, quoted === null ? 1 : quoted.after - 1);
}

function withoutRemark(value: string, marks: readonly string[]): string {
  const places = marks.map((mark) => placeOf(value, ` ${mark} `)).filter((at) => at > 0);
  return places.length === 0 ? value : value.slice(0, Math.min(...places)).trimEnd();
}

interface Bracket {
  readonly open: string;
  readonly close: string;
  readonly isTight: boolean;
}

interface Bracketed {
  readonly value: string;
  readonly open: string;
  readonly inner: string;
  readonly isTight: boolean;
}

const shareOfAny = 0.8;
const leastOfAny = 3;

/** Brackets behind values that say something of them: by what is in them, or because nearly every value has one. */
function bracketsIn(values: readonly string[], mark: DecimalMark): readonly Bracket[] {
  const found: Bracket[] = [];
  let rest = values;
  for (let round = 0; round < 4; round += 1) {
    const tails = rest.flatMap((value) => bracketBehind(value) ?? []);
    const next = [...closing.keys()].find((open) =>
      saysSomething(
        tails.filter((tail) => tail.open === open),
        rest.length,
        mark,
      ),
    );
    if (next === undefined) break;
    const own = tails.filter(({ open }) => open === next);
    const bracket = {
      open: next,
      close: closing.get(next) ?? '',
      isTight: own.some(({ isTight }) => isTight),
    };
    if (found.some(({ open }) => open === next)) break;
    found.push(bracket);
    rest = rest.map((value) => withoutBrackets(value, [bracket]));
  }
  return found;
}

function saysSomething(tails: readonly Bracketed[], values: number, mark: DecimalMark): boolean {
  if (tails.length === 0) return false;
  const said = tails.filter(({ inner, value }) => saysOf(inner, value, mark)).length;
  return 2 * said >= tails.length || (tails.length >= leastOfAny && tails.length >= shareOfAny * values);
}

function saysOf(inner: string, value: string, mark: DecimalMark): boolean {
  const said = saidIn(inner, mark);
  if (said.range !== null) return numberLook(value.split(/\s/)[0] ?? '', mark) !== null;
  if (said.words !== null) return said.words.includes(value) || inner.includes('|') || /:/.test(inner);
  return said.default !== null || (said.unit !== null && numberLook(value, mark) !== null);
}

/** The bracket that ends a value, with a value before it. */
function bracketBehind(value: string): Bracketed | null {
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
    return { value: before, open, inner: value.slice(at + 1, -1).trim(), isTight };
  }
  return null;
}

function withoutBrackets(value: string, brackets: readonly Bracket[]): string {
  let rest = value;
  for (let round = 0; round < 4; round += 1) {
    const tail = bracketBehind(rest);
    const own = brackets.find(({ open }) => open === tail?.open);
    if (tail === null || own === undefined || (tail.isTight && !own.isTight)) return rest;
    rest = tail.value;
  }
  return rest;
}

const field = { low: 'low', high: 'high', default: 'default', unit: 'unit' } as const;

/** `min 0 max 10`, `def=5`: words behind a value that say what the next one is. */
function keysIn(values: readonly string[]): readonly string[] {
  const counts = new Map<string, number>();
  for (const value of values)
    for (const template of keysOf(value)) counts.set(template, (counts.get(template) ?? 0) + 1);
  const least = Math.max(2, leastShare * values.length * 0.5);
  return [...counts]
    .filter(([, count]) => count >= least)
    .map(([template]) => template)
    .slice(0, 12);
}

function keysOf(value: string): readonly string[] {
  const found: string[] = [];
  const words = value.slice(0, 300).split(/\s+/);
  for (const [at, word] of words.entries()) {
    const [, key = '', joint = ''] = /^(\p{L}{1,20})([:=]?)/u.exec(word) ?? [];
    const kind = at === 0 ? null : keyOf(key);
    if (kind === null || kind === 'range' || kind === 'words') continue;
    const isTight = word.length > key.length + joint.length;
    if (joint === '' && isTight) continue;
    if (joint === '' && words[at + 1] === undefined) continue;
    found.push(` ${key}${joint}${isTight ? '' : ' '}{${field[kind]}}`);
  }
  return found;
}

function withoutKeys(value: string, keyed: readonly string[]): string {
  const places = keyed
    .map((template) => value.indexOf(template.slice(0, template.indexOf('{'))))
    .filter((at) => at > 0);
  return places.length === 0
    ? value
    : value
        .slice(0, Math.min(...places))
        .replace(/[,;]\s*$/, '')
        .trimEnd();
}

/** ` 0..10`: a range that stands behind most values without brackets. */
function rangesIn(values: readonly string[], mark: DecimalMark): readonly string[] {
  const count = values.filter((value) => {
    const words = value.split(/\s+/);
    const last = words.at(-1) ?? '';
    return words.length > 1 && /\.\.|\u2026|\d-\d/.test(last) && rangeIn(last, mark) !== null;
  }).length;
  return count >= 2 && count >= leastShare * values.length ? [' {range}'] : [];
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
