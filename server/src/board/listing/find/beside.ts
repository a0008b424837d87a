import { type DecimalMark, numberLook } from '../number-look';
import { rangeIn } from '../range-and-words';
import { trimmed } from '../text/characters';
import { couldBeUnit, isKnownUnit } from '../unit-words';
import { keyOf } from '../value-keys';
import { isAmount } from '../value-look';
import { bracketsIn, withoutBrackets } from './beside-brackets';
import { keysIn, longestLooked, withoutKeys } from './beside-keys';
import { leastShare, remarkMarks, withoutRemark } from './beside-marks';

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
