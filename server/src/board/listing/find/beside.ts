import { saysOf } from '../forms/said-between';
import { type DecimalMark, numberLook } from '../number-look';
import { couldBeUnit, isKnownUnit, type KeyKind, keyOf, rangeIn, wordsIn } from '../stated';
import { closing, isBlank, opening, quotedAt, quotedFrom, trimmed } from '../text/characters';
import { isAmount, lookOf, numberOf } from '../value-look';
import { commentMark } from './comments';

/** The forms of what stands beside the values of a listing, as templates. */
export function besideForms(
  values: readonly string[],
  comments: readonly string[],
  mark: DecimalMark,
): readonly string[] {
  const remarks = remarkMarks(values, comments);
  const found = new Set<string>();
  const whole = values.map((value) => withoutRemark(value, remarks));
  const marked = markedDefault(whole, mark);
  const unmarked = marked === null ? whole : whole.map((value) => withoutMarked(value, marked));
  if (marked !== null) found.add(` ${marked}{default}`);
  let rest = unmarked.map(withoutUnitBehind);
  const units = rest.every((value, index) => value === unmarked[index]) ? [] : [' {unit}'];
  for (let round = 0; round < mostRounds; round += 1) {
    const brackets = bracketsIn(rest, mark);
    const bare = rest.map((value) => withoutBrackets(value, brackets));
    const keyed = keysIn(bare, mark);
    const plain = bare.map((value) => withoutKeys(value, keyed));
    const ranges = rangesIn(plain, mark);
    rest = ranges.length === 0 ? plain : plain.map((value) => withoutRange(value, mark));
    const before = found.size;
    for (const { open, close, isTight } of brackets)
      found.add(`${isTight ? '' : ' '}${open}{remark}${close}`);
    for (const template of [...keyed, ...ranges]) found.add(template);
    if (found.size === before) break;
  }
  return [
    ...remarks.map((one) => ` ${one}{remark}`),
    ...found,
    ...new Set([...units, ...unitsIn(rest, mark)]),
    ...(remarks.length === 0 && areRemarked(rest, mark) ? [' {remark}'] : []),
  ];
}

/** `90 (20 .. 400) Hz`: a unit that follows what a bracket says. */
function withoutUnitBehind(value: string): string {
  const last = value.lastIndexOf(' ');
  const before = value.slice(0, Math.max(0, last)).trimEnd();
  const isBehindBracket = /[)\]}>]$/.test(before) && /\d/.test(before);
  return isBehindBracket && isKnownUnit(value.slice(last + 1)) ? before : value;
}

/** What a default has right before it, without a word for it: `47 <0,250> *45`. */
const marksOfDefault = ['*', '!', '@', '^', '~', '=', '!='] as const;
const shareOfMarked = 0.6;
const leastMarked = 2;

/** The mark behind which most values have another of their kind: a number behind a number, a word behind a word. */
function markedDefault(values: readonly string[], mark: DecimalMark): string | null {
  const isNumber = (text: string) => isAmount(text, mark);
  const found = marksOfDefault.find((one) => {
    const marked = values.filter((value) => {
      const other = markedIn(value, one);
      const own = value.split(/\s/)[0] ?? '';
      return other !== null && own !== other && isNumber(own) === isNumber(other.slice(one.length));
    });
    return marked.length >= leastMarked && marked.length >= shareOfMarked * values.length;
  });
  return found ?? null;
}

/** The last word of a value but for a unit behind it, if it has this mark before it. */
function markedIn(value: string, mark: string): string | null {
  const words = value.length > longestLooked ? [] : value.split(/\s+/).slice(1);
  return (
    words
      .slice(-2)
      .find((word) => word.startsWith(mark) && /[\p{L}\p{N}.+-]/u.test(word[mark.length] ?? '')) ?? null
  );
}

function withoutMarked(value: string, mark: string): string {
  const word = markedIn(value, mark);
  if (word === null) return value;
  const at = value.lastIndexOf(word);
  return `${value.slice(0, at).trimEnd()} ${value.slice(at + word.length).trimStart()}`.trimEnd();
}

/** What stands behind something that was taken away is looked for again. */
const mostRounds = 4;

const usualMarks = ['#', '//', ';', ';;', '--', '!', '%', '~', '|', '*', '<-', '\u2190'] as const;
/** These begin a remark even where the listing has one only; the others where many lines have one. */
const sureMarks: ReadonlySet<string> = new Set(['#', '//']);
const leastShare = 0.3;
/** What stands behind a mark that parts settings. */
const nextSetting = /^\s+[\p{L}\p{N}_.@-]+\s?[=:]/u;

function remarkMarks(values: readonly string[], comments: readonly string[]): readonly string[] {
  const own = comments.filter((mark) => commentMark(mark) !== null);
  const ofComments = new Set([...own, ...own.map((mark) => `${mark}${mark}`)]);
  const marks = [...new Set([...ofComments, ...usualMarks])];
  return marks.filter((mark) => {
    const marked = values.filter((value) => placeOf(value, mark) > 0);
    const places = marked.length;
    if (places === 0) return false;
    if (sureMarks.has(mark) || ofComments.has(mark)) return true;
    const further = marked.filter((value) =>
      nextSetting.test(value.slice(placeOf(value, mark) + mark.length)),
    ).length;
    if (2 * further >= places) return false;
    return (places >= 2 && places >= leastShare * values.length) || endsWhole(marked, mark);
  });
}

/** Whether a semicolon stands apart behind whole values, with words behind it, or behind what brackets say of them. */
function endsWhole(values: readonly string[], mark: string): boolean {
  return (
    mark === ';' &&
    values.every((value) => {
      const at = placeOf(value, mark);
      const before = value.slice(0, at).trimEnd();
      const own = withoutAnyBracket(before);
      const isWhole = !/\s/.test(own) || quotedFrom(own, 0, own.length) !== null;
      return isWhole && (own === before ? /^\s+\p{L}/u : /^\s+[\p{L}\d]/u).test(value.slice(at + 1));
    })
  );
}

function withoutAnyBracket(value: string): string {
  let rest = value;
  for (let tail = bracketBehind(rest); tail !== null; tail = bracketBehind(rest)) rest = tail.value;
  return rest;
}

/** Where a mark stands between blanks behind a value, outside of quotes; -1 where it does not. */
function placeOf(value: string, mark: string): number {
  let at = value.indexOf(mark, quotedAt(value, 0)?.after ?? 1);
  while (at >= 0) {
    const end = at + mark.length;
    if (isBlank(value[at - 1]) && isBlank(value[end])) return at;
    at = value.indexOf(mark, end);
  }
  return -1;
}

function withoutRemark(value: string, marks: readonly string[]): string {
  const places = marks.map((mark) => placeOf(value, mark)).filter((at) => at > 0);
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

/** The bracket that ends a value, with a value before it. */
function bracketBehind(value: string): Bracketed | null {
  const close = value.at(-1) ?? '';
  const open = opening.get(close);
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

/** `min 0 max 10`, `def=5`, `one of a, b`: words behind a value that say what the next one is. */
function keysIn(values: readonly string[], mark: DecimalMark): readonly string[] {
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

const longestLooked = 400;

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

function withoutKeys(value: string, keyed: readonly string[]): string {
  const places = keyed
    .map((template) => value.indexOf(template.slice(0, template.indexOf('{')).trimEnd()))
    .filter((at) => at > 0);
  if (places.length === 0) return value;
  return value
    .slice(0, Math.min(...places))
    .replace(/[,;]$/, '')
    .trimEnd();
}

/** ` 0..10`, ` 0 … 10`: a range that stands behind values without brackets. */
function rangesIn(values: readonly string[], mark: DecimalMark): readonly string[] {
  const tails = values.map((value) => rangeBehind(value, mark)).filter((tail) => tail !== null);
  const sure = tails.filter((tail) => /\.\.|\u2026/.test(tail)).length;
  return sure > 0 || (tails.length >= 2 && tails.length >= leastShare * values.length) ? [' {range}'] : [];
}

function withoutRange(value: string, mark: DecimalMark): string {
  const tail = rangeBehind(value, mark);
  return tail === null ? value : value.slice(0, value.length - tail.length).trimEnd();
}

/** The range that ends a value, of one word or three, behind a number. */
function rangeBehind(value: string, mark: DecimalMark): string | null {
  const words = value.length > 200 ? [] : value.split(/\s+/);
  for (const count of [3, 1]) {
    const tail = words.slice(-count).join(' ');
    const [first = ''] = words;
    if (words.length <= count || !isAmount(first, mark) || !/\.\.|\u2026|\d-\d| - /.test(tail)) continue;
    if (rangeIn(tail, mark) !== null && value.endsWith(tail)) return tail;
  }
  return null;
}

const shareOfRemarked = 0.8;
const leastRemarked = 3;

/** ` {remark}`: words behind nearly every number, hardly two of them the same, say what it is. */
function areRemarked(values: readonly string[], mark: DecimalMark): boolean {
  const remarks = values.flatMap((value) => {
    const [amount = '', ...words] = value.length > longestLooked ? [] : value.split(/\s+/);
    const [first = ''] = words;
    const said = isKnownUnit(first) ? words.slice(1) : words;
    const isSaid = said.length > 0 && /^\p{L}{2}/u.test(said[0] ?? '') && keyOf(said[0] ?? '') === null;
    return numberLook(amount, mark) !== null && isSaid ? [said.join(' ')] : [];
  });
  const long = remarks.filter((remark) => remark.includes(' ')).length;
  return (
    remarks.length >= leastRemarked &&
    remarks.length >= shareOfRemarked * values.length &&
    2 * long >= remarks.length &&
    new Set(remarks).size >= shareOfRemarked * remarks.length
  );
}

/** ` {unit}`: known units, or a word that comes back, behind single numbers. */
function unitsIn(values: readonly string[], mark: DecimalMark): readonly string[] {
  const counts = new Map<string, number>();
  for (const value of values) {
    const [start, end] = trimmed(value);
    const words = value.slice(start, end).split(/\s+/);
    const [amount = '', unit = ''] = words.slice(-2);
    if (words.length < 2 || words.length > 4 || numberLook(amount, mark) === null) continue;
    if (couldBeUnit(unit)) counts.set(unit, (counts.get(unit) ?? 0) + 1);
  }
  const isUnit = [...counts].some(([unit, count]) => isKnownUnit(unit) || count >= 3);
  return isUnit ? [' {unit}'] : [];
}
