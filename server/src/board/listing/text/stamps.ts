import { isDigit } from './characters';
import type { ListingLine } from './line';

/** A time at the start of a line, in brackets or not: of the day, with a date, or seconds since the start. */
const stamps: readonly RegExp[] = [
  /^\s{0,4}[[(]?(?:\d{4}-\d\d-\d\d[T ])?\d{1,2}:\d\d:\d\d(?:[.,]\d{1,9})?(?:Z|[+-]\d\d:?\d\d)?[\])]?(?:\s?[|>-]|:)?(?:\s|$)/,
  /^\s{0,4}[[(]\s{0,8}\d{1,9}\.\d{1,9}(?:\s?s)?\s{0,4}[\])]:?(?:\s|$)/,
  /^\s{0,4}[[(]?\d{1,2}:\d\d[.,]\d{1,6}[\])]?(?:\s?[|>-]|:)?(?:\s|$)/,
  /^\s{0,4}[[(]?(?:\d{4}[-/]\d\d[-/]\d\d|\d\d[./]\d\d[./]\d{4})[ T]\d{1,2}:\d\d[\])]?(?:\s?[|>-]|:)?(?:\s|$)/,
];

/** What a terminal puts before the time, to tell answers from what was typed. */
const direction = /^\s{0,4}[<>*]{1,3}\s?/;

const leastShare = 0.8;

/** The lines without the time stamps that a terminal puts before each: where most have one. */
export function withoutStamps(lines: readonly ListingLine[]): readonly ListingLine[] {
  const some = someOf(lines);
  const stamp = stamps.find((one) => {
    const found = some.filter(({ text }) => stampOf(one, text) !== '');
    if (found.length === 0 || found.length < leastShare * some.length) return false;
    // At the start of one line alone, a time may be a value, unless a document follows it.
    const [first] = found;
    return (
      found.length > 1 ||
      (first !== undefined && /^\s{0,8}[[{]/.test(first.text.slice(stampOf(one, first.text).length)))
    );
  });
  if (stamp === undefined) return lines;
  const isTable = areBarred(some);
  return lines.map((line) => line.from(lengthOf(stampOf(stamp, line.text), isTable)));
}

/** The time at the start of a line, with the mark before it; empty where none stands there. */
function stampOf(stamp: RegExp, text: string): string {
  const start = direction.exec(text)?.[0] ?? '';
  const time = stamp.exec(text.slice(start.length))?.[0] ?? '';
  return time === '' ? '' : start + time;
}

/** How much of a line a mark at its start takes: of a table the first bar is left. */
function lengthOf(mark: string, isTable: boolean): number {
  const bar = mark.indexOf('|');
  return bar < 0 || !isTable ? mark.length : bar;
}

/** Whether most lines have several bars, as those of a table have. */
function areBarred(lines: readonly ListingLine[]): boolean {
  const barred = lines.filter(({ text }) => text.indexOf('|') !== text.lastIndexOf('|'));
  return barred.length >= leastShare * lines.length;
}

const mostTried = 400;

function someOf(lines: readonly ListingLine[]): readonly ListingLine[] {
  const said = lines.filter(({ text }) => text.trim() !== '');
  const step = Math.ceil(said.length / mostTried);
  return step <= 1 ? said : said.filter((_, at) => at % step === 0);
}

/** The number that a tool puts before each line: `  12  `, `12: `, `12| `, `[12] `. */
const counter = /^\s{0,8}[[(]?(\d{1,7})[\])]?(?:\s?[:|.)>]\s?|\t|\s{1,4})/;

/** What counts one line alone counts nothing. */
const leastCounted = 2;

interface CountedNumber {
  readonly number: number;
  /** Of the number with its marks. */
  readonly length: number;
  /** Blanks behind them; null where nothing more stands there. */
  readonly gap: number | null;
}

/**
 * The lines without numbers that count them. Where only settings are numbered, the number may be the board's own and
 * stays: it counts lines where it numbers others as well, which `isOther` tells, or where every line from the first on
 * has one as tools write them.
 */
export function withoutCounters(
  lines: readonly ListingLine[],
  isOther: (text: string) => boolean,
): readonly ListingLine[] {
  const isTable = areBarred(someOf(lines));
  const found = lines.map(({ text }) => counterOf(text, isTable));
  const numbered = found.flatMap((one) => (one === null ? [] : [one]));
  const said = lines.filter(({ text }) => text.trim() !== '').length;
  if (numbered.length === 1 && said === 1) return lines.map(withoutOne);
  if (numbered.length < leastCounted || numbered.length < leastShare * said) return lines;
  const steps = numbered.filter(
    ({ number }, at) => at > 0 && number === (numbered[at - 1]?.number ?? 0) + 1,
  ).length;
  const others = lines.filter(({ text }, at) => {
    const own = found[at];
    if (own == null) return false;
    const rest = text.slice(own.length).trim();
    // What ends with a colon heads what stands further in; else it may be a setting without a value.
    return isOther(rest) && (!rest.endsWith(':') || (found[at + 1]?.gap ?? 0) > (own.gap ?? 0));
  }).length;
  const isTools =
    saysMore(lines, found) &&
    numbered.length === said &&
    steps === said - 1 &&
    numbered[0]?.number === 1 &&
    hasToolForm(lines);
  if (
    steps < leastShare * (numbered.length - 1) ||
    (others === 0 && !isTools) ||
    (numbered.length < 3 && !isTools)
  )
    return lines;
  // Further blanks indent what stands behind them.
  const gap = Math.min(...numbered.flatMap((one) => one.gap ?? []));
  return lines.map((line, at) => {
    const own = found[at];
    return own == null ? line : line.from(Math.min(line.text.length, own.length + gap));
  });
}

/** One line alone is counted where a document follows the number. */
function withoutOne(line: ListingLine): ListingLine {
  const [mark = ''] = counter.exec(line.text) ?? [];
  return /^\s{0,8}(?:\{\s{0,8}"|\[\s{0,8}[{[])/.test(line.text.slice(mark.length, mark.length + 40))
    ? line.from(mark.length)
    : line;
}

/** `1: `, `1| `, `0001 `, `1` and a tab: not the ways in which people number a list. */
function hasToolForm(lines: readonly ListingLine[]): boolean {
  return lines.every(({ text }) => text.trim() === '' || /^\s*\d+(?::\s|\||\t| \S)/.test(text));
}

/** Whether what stands behind the numbers is more than one word: a name and a value, at least. */
function saysMore(lines: readonly ListingLine[], found: readonly (CountedNumber | null)[]): boolean {
  const rests = lines.flatMap(({ text }, at) =>
    found[at] == null ? [] : [text.slice(found[at].length).trim()],
  );
  const more = rests.filter((rest) => /[\s=:,;|{}[\]]/.test(rest)).length;
  return more >= 0.6 * rests.length;
}

function counterOf(text: string, isTable: boolean): CountedNumber | null {
  const found = counter.exec(text);
  if (found === null) return null;
  const [whole, digits = ''] = found;
  // Only blanks between two numbers make a pair of them, unless the first is filled up.
  const isPair = isDigit(text[whole.length]) && /\d *$/.test(whole) && !digits.startsWith('0');
  if (isPair) return null;
  const { length } = whole.slice(0, lengthOf(whole, isTable)).trimEnd();
  const rest = text.slice(length);
  // `1 = 5` is a setting whose name is a number.
  if (/^\s{0,40}(?:[:<-]?=|[=-]>|<-)/.test(rest)) return null;
  const blanks = rest.length - rest.trimStart().length;
  const gap = rest.trim() === '' ? null : rest.startsWith('\t') ? 1 : blanks;
  return { number: Number(digits), length, gap };
}
