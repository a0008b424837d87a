import { isBlank, isLetterOrDigit } from '../text/characters';
import { isSurelyHeading } from './headings';
import type { Sample } from './sample';

/** What the trade begins comments with; the second kind only with a blank, or more of its kind, behind it. */
const always = ['#', ';', '//'] as const;
const withBlank = ['--', '~', '%', '!', "'", '"', '*', 'REM', 'rem'] as const;

/** The mark of a comment that a line begins with; null where it begins with none. */
export function commentMark(text: string): string | null {
  for (const mark of always) if (text.startsWith(mark)) return mark;
  for (const mark of withBlank) {
    if (!text.startsWith(mark)) continue;
    const end = afterAll(text, mark);
    if (end >= text.length || isBlank(text[end])) return mark;
  }
  return null;
}

/** Whether a mark begins nothing but comments, with a blank behind it or without. */
export function isAlwaysComment(mark: string): boolean {
  return always.some((one) => one === mark);
}

function afterAll(text: string, mark: string): number {
  let end = mark.length;
  while (!isLetterOrDigit(mark) && text[end] === mark.at(-1)) end += 1;
  return end;
}

/** The comment marks of a listing, the most frequent first, and its other lines. */
export interface Commented {
  readonly marks: readonly string[];
  readonly lines: readonly Sample[];
  readonly comments: readonly Sample[];
}

const mostMarks = 4;
const leastNumbered = 2;

/** `#1 `, `#2 `: what counts settings is no comment. */
function areNumbered(lines: readonly Sample[]): boolean {
  const numbers = lines.map(({ text }) => /^#(\d+)\s+\S/.exec(text)?.[1]);
  return (
    lines.length >= leastNumbered &&
    numbers.every(
      (number, at) => number !== undefined && (at === 0 || Number(number) > Number(numbers[at - 1])),
    )
  );
}

export function commented(sample: readonly Sample[]): Commented {
  const hasNumbers = areNumbered(sample.filter(({ text }) => text.startsWith('#')));
  const markOf = ({ text }: Sample) => {
    const mark = commentMark(text);
    if (mark === '#' && hasNumbers) return null;
    // Marks on both sides of a name make a heading, unless they always begin comments.
    return mark !== null && isSurelyHeading(text) && !isAlwaysComment(mark) ? null : mark;
  };
  const counts = new Map<string, number>();
  for (const line of sample) {
    const mark = markOf(line);
    if (mark !== null) counts.set(mark, (counts.get(mark) ?? 0) + 1);
  }
  const marks = [...counts]
    .sort(([, one], [, other]) => other - one)
    .map(([mark]) => mark)
    .slice(0, mostMarks);
  const isComment = (line: Sample) => marks.includes(markOf(line) ?? '');
  const lines = sample.filter((line) => !isComment(line));
  // Where nothing else stands, the mark belongs to the settings.
  if (lines.length === 0) return { marks: [], lines: sample, comments: [] };
  return { marks, lines, comments: sample.filter(isComment) };
}
