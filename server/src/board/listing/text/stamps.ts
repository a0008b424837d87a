import { isDigit } from './characters';
import type { Line } from './line';

/** A time at the start of a line, in brackets or not: of the day, with a date, or seconds since the start. */
const stamps: readonly RegExp[] = [
  /^\s{0,4}[[(]?(?:\d{4}-\d\d-\d\d[T ])?\d{1,2}:\d\d:\d\d(?:[.,]\d{1,9})?(?:Z|[+-]\d\d:?\d\d)?[\])]?(?:\s?[|>-]|:)?(?:\s|$)/,
  /^\s{0,4}[[(]\s{0,8}\d{1,9}\.\d{1,9}(?:\s?s)?\s{0,4}[\])]:?(?:\s|$)/,
  /^\s{0,4}[[(]?\d{1,2}:\d\d[.,]\d{1,6}[\])]?(?:\s?[|>-]|:)?(?:\s|$)/,
  /^\s{0,4}[[(]?(?:\d{4}[-/]\d\d[-/]\d\d|\d\d[./]\d\d[./]\d{4})[ T]\d{1,2}:\d\d[\])]?(?:\s?[|>-]|:)?(?:\s|$)/,
];

const leastShare = 0.8;
const leastLines = 2;

/** The lines without the time stamps that a terminal puts before each: where most have one. */
export function withoutStamps(lines: readonly Line[]): readonly Line[] {
  const some = someOf(lines);
  const stamp = stamps.find((one) => {
    const found = some.filter(({ text }) => one.test(text));
    return found.length >= leastLines && found.length >= leastShare * some.length;
  });
  if (stamp === undefined) return lines;
  return lines.map((line) => line.from(stamp.exec(line.text)?.[0].length ?? 0));
}

const mostTried = 400;

function someOf(lines: readonly Line[]): readonly Line[] {
  const said = lines.filter(({ text }) => text.trim() !== '');
  const step = Math.ceil(said.length / mostTried);
  return step <= 1 ? said : said.filter((_, at) => at % step === 0);
}

/** The number that a tool puts before each line: `  12  `, `12: `, `12| `, `[12] `; blanks behind it are counted apart. */
const counter = /^\s{0,8}[[(]?(\d{1,7})(?:[\])]?\s?[:|.)>]|[\])]|(?=\s))/;

interface Counted {
  readonly number: number;
  readonly length: number;
  /** `[12]`, `12.`, `12)`: so people and boards number what they list, and hardly a tool its lines. */
  readonly isListed: boolean;
}

/**
 * The lines without numbers that count them. Where only settings are numbered, the number is the board's own and
 * stays: it counts as one where it numbers lines of other kinds as well, which `isOther` tells.
 */
export function withoutCounters(lines: readonly Line[], isOther: (text: string) => boolean): readonly Line[] {
  const found = lines.map(({ text }) => counterOf(text));
  const numbered = found.flatMap((one) => (one === null ? [] : [one]));
  const said = lines.filter(({ text }) => text.trim() !== '').length;
  if (numbered.length < 3 || numbered.length < leastShare * said) return lines;
  const steps = numbered.filter(
    ({ number }, at) => at > 0 && number === (numbered[at - 1]?.number ?? 0) + 1,
  ).length;
  const others = lines.filter(({ text }, at) => {
    const own = found[at];
    return own != null && isOther(text.slice(own.length).trim());
  }).length;
  const isTools = others > 0 || (isPadded(lines, found) && numbered[0]?.number === 1);
  if (steps < leastShare * (numbered.length - 1) || !isTools) return lines;
  const gap = gapBehind(lines, found);
  return lines.map((line, at) => line.from(Math.min(line.text.length, (found[at]?.length ?? -gap) + gap)));
}

/** Whether all numbers are written equally wide, with blanks or zeros before them: a tool knows how many will come. */
function isPadded(lines: readonly Line[], found: readonly (Counted | null)[]): boolean {
  const lengths = new Set(found.flatMap((one) => one?.length ?? []));
  return (
    lengths.size === 1 &&
    lines.every(({ text }, at) => {
      const own = found[at];
      return own == null || (!own.isListed && /^(?:\s|0\d)/.test(text));
    })
  );
}

/** How many blanks stand behind every number: more of them indent what follows. */
function gapBehind(lines: readonly Line[], found: readonly (Counted | null)[]): number {
  const gaps = lines.flatMap(({ text }, at) => {
    const rest = text.slice(found[at]?.length ?? text.length);
    if (rest.trim() === '') return [];
    return [rest.startsWith('\t') ? 1 : rest.length - rest.trimStart().length];
  });
  return gaps.length === 0 ? 0 : Math.min(...gaps);
}

function counterOf(text: string): Counted | null {
  const found = counter.exec(text);
  if (found === null || isDigit(text[found[0].length])) return null;
  const [{ length }, digits] = found;
  return { number: Number(digits), length, isListed: /[.)\]]/.test(found[0]) };
}
