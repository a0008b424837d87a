import { afterLooseRow } from '../forms/template';
import { closing, isBlank, isDigit, isLetterOrDigit, quotedAt } from '../text/characters';
import { keyOf } from '../value-keys';
import type { Sample } from './sample';

/** What may part a name from its value, as the literal of a template, with how many lines hold it. */
export interface Separator {
  readonly literal: string;
  readonly lines: number;
  /** How strongly it says that it parts the two: 0 to 1. */
  readonly strength: number;
  /** What stands behind the value, if it goes with it. */
  readonly suffix?: string;
}

interface SeparatorCount {
  lines: number;
  before: number;
  after: number;
}

const mostInLine = 10;
const mostMarks = 16;
const mostWords = 6;

/** Everything that may part names from values in these lines, the most frequent first. */
export function separatorsIn(sample: readonly Sample[]): readonly Separator[] {
  const marks = new Map<string, SeparatorCount>();
  for (const { text } of sample) countMarks(text, marks);
  const found = [...marks]
    .sort(([, one], [, other]) => other.lines - one.lines)
    .slice(0, mostMarks)
    .flatMap(([core, count]) => literalsOf(core, count));
  const held = gaps.filter(({ literal }) => sample.some(({ text }) => holdsGap(text, literal)));
  return [...found, ...wordSeparators(sample), ...enclosing(sample), ...held];
}

const gaps: readonly Separator[] = [
  { literal: '\t', lines: 0, strength: 0.96 },
  { literal: '  ', lines: 0, strength: 0.94 },
  { literal: ' ', lines: 0, strength: 0.8 },
];

const shareEnclosed = 0.6;

/** Brackets around the values: `tern(5)`. */
function enclosing(sample: readonly Sample[]): readonly Separator[] {
  return [...closing].flatMap(([open, close]) => {
    const lines = sample.filter(
      ({ text }) => text.replace(/[;,]$/, '').endsWith(close) && text.indexOf(open) > 0,
    );
    if (lines.length < shareEnclosed * sample.length) return [];
    const isApart = lines.every(({ text }) => isBlank(text[text.indexOf(open) - 1]));
    return [{ literal: `${isApart ? ' ' : ''}${open}`, lines: lines.length, strength: 0.95, suffix: close }];
  });
}

/** A tab is as wide as any blanks. */
function holdsGap(text: string, literal: string): boolean {
  return text.includes(literal) || (literal !== '\t' && text.includes('\t'));
}

const strong: ReadonlyMap<string, number> = new Map([
  ['=', 1],
  [':=', 1],
  ['=>', 1],
  ['->', 1],
  ['<-', 1],
  ['~>', 1],
  ['<=', 0.98],
  ['==', 0.98],
  [':', 0.97],
  ['|', 0.95],
  [',', 0.93],
  [';', 0.92],
  ['...', 1],
  ['...:', 1],
  ['...=', 1],
  // It opens what is said of a value as well.
  ['<', 0.6],
]);

/** Marks within names and numbers, which part nothing unless blanks stand around them. */
const joints: ReadonlySet<string> = new Set([
  '.',
  '-',
  '_',
  '/',
  '+',
  '@',
  "'",
  '%',
  '&',
  '\\',
  '*',
  '#',
  '$',
  '!',
  '?',
  '::',
]);

function countMarks(text: string, marks: Map<string, SeparatorCount>): void {
  const inLine = new Set<string>();
  let at = quotedAt(text, 0)?.after ?? 1;
  while (at < text.length && inLine.size < mostInLine) {
    const character = text[at] ?? '';
    const row = isBlank(text[at - 1]) ? afterLooseRow(text, at) : at;
    const isRow = row - at >= leastRow && !isBlank(character) && !isLetterOrDigit(character);
    if (!isRow && (isBlank(character) || isLetterOrDigit(character) || /["'`()[\]{}_]/.test(character))) {
      at += 1;
      continue;
    }
    const end = isRow ? row : afterMarks(text, at);
    const core = isRow ? character.repeat(3) : coreOf(text.slice(at, end));
    const before = isBlank(text[at - 1]);
    const after = end >= text.length || isBlank(text[end]);
    const isAsked = core === '?' && !before && after && end < text.length;
    const isJoint =
      core !== null && joints.has(core) && !(before && after) && !isNumberSign(text, at) && !isAsked;
    const parts = core !== null && !isJoint && !isInNumber(text, at, end);
    if (core !== null && parts && !inLine.has(core)) {
      inLine.add(core);
      const count = marks.get(core) ?? { lines: 0, before: 0, after: 0 };
      marks.set(core, count);
      count.lines += 1;
      if (before) count.before += 1;
      if (after) count.after += 1;
    }
    at = end;
  }
}

/** `lines#24`: behind it stands a number and nothing else. */
function isNumberSign(text: string, at: number): boolean {
  return text[at] === '#' && !isBlank(text[at - 1]) && /^#\d{1,15}[,;]?$/.test(text.slice(at, at + 20));
}

/** Whether a mark stands within digits, such as `01;34`, that do not begin the line. */
function isInNumber(text: string, at: number, end: number): boolean {
  if (!isDigit(text[at - 1]) || !isDigit(text[end])) return false;
  let start = at;
  while (start > 0 && isDigit(text[start - 1])) start -= 1;
  return start > 0 && !isLetterOrDigit(text[start - 1]);
}

function afterMarks(text: string, from: number): number {
  let end = from;
  while (end < text.length && /[^\p{L}\p{N}\s"'`()[\]{}_]/u.test(text[end] ?? '')) end += 1;
  return end;
}

const longestCore = 6;
/** Fewer marks with blanks between them lead to nothing. */
const leastRow = 3;

/** A row of one mark is as good as any longer one; other long runs part nothing. */
function coreOf(run: string): string | null {
  const [first = ''] = run;
  if (run.length > 2 && run === first.repeat(run.length)) return first.repeat(3);
  const last = run.at(-1) ?? '';
  if (run.length > 3 && /[:=]/.test(last) && run === first.repeat(run.length - 1) + last)
    return first.repeat(3) + last;
  return run.length > longestCore ? null : run;
}

/** With the blanks that always stand around it, and without where some do not. */
function literalsOf(core: string, { lines, before, after }: SeparatorCount): readonly Separator[] {
  const strength = strong.get(core) ?? 0.85;
  const variants = [
    ...(before > 0 && after > 0 ? [{ literal: ` ${core} `, lines: Math.min(before, after), strength }] : []),
    ...(after > 0 ? [{ literal: `${core} `, lines: after, strength }] : []),
    ...(before < lines || after < lines ? [{ literal: core, lines, strength }] : []),
  ];
  return joints.has(core) && core !== '#' ? variants.slice(0, 1) : variants;
}

/** Words that say it in a sentence; others are taken where they stand in most lines. */
const usual: ReadonlySet<string> = new Set([
  'is',
  'are',
  'equals',
  'ist',
  'sind',
  'gleich',
  'est',
  'vaut',
  'to',
  'becomes',
  'was',
]);
const shareOfUsual = 0.3;
const shareOfWord = 0.8;
const leastLinesOfWord = 4;
const longestLine = 300;

/** Words that come back in most lines, with blanks around them: ` is `, ` is set to `. */
function wordSeparators(sample: readonly Sample[]): readonly Separator[] {
  const lines = sample.map(({ text }) => text.slice(0, longestLine).split(/\s+/).slice(1, -1));
  const counts = counted(lines.map((words) => words.filter((word) => /^\p{L}{1,12}$/u.test(word))));
  const isFrequent = (word: string) => {
    const count = counts.get(word) ?? 0;
    // `min 0` says something of a value and does not begin it.
    if (keyOf(word) !== null && !usual.has(word)) return false;
    if (usual.has(word)) return count >= shareOfUsual * sample.length;
    return count >= leastLinesOfWord && count >= shareOfWord * sample.length;
  };
  const runs = counted(lines.map((words) => runsOf(words, isFrequent)));
  return [...runs]
    .filter(([, count]) => count >= shareOfUsual * sample.length)
    .sort(([, one], [, other]) => other - one)
    .slice(0, mostWords)
    .map(([run, count]) => {
      const isUsual = run.split(' ').some((word) => usual.has(word));
      return { literal: ` ${run} `, lines: count, strength: isUsual ? 0.99 : 0.9 };
    });
}

function runsOf(words: readonly string[], isFrequent: (word: string) => boolean): readonly string[] {
  const runs: string[][] = [[]];
  for (const word of words) {
    if (isFrequent(word)) runs.at(-1)?.push(word);
    else runs.push([]);
  }
  return runs.filter((run) => run.length > 0).map((run) => run.join(' '));
}

/** In how many of the lists each text stands. */
function counted(lists: readonly (readonly string[])[]): ReadonlyMap<string, number> {
  const counts = new Map<string, number>();
  for (const list of lists) for (const text of new Set(list)) counts.set(text, (counts.get(text) ?? 0) + 1);
  return counts;
}
