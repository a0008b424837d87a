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

export function commented(sample: readonly Sample[]): Commented {
  const counts = new Map<string, number>();
  for (const { text } of sample) {
    // A name between rows of a mark heads a group.
    const mark = isSurelyHeading(text) ? null : commentMark(text);
    if (mark !== null) counts.set(mark, (counts.get(mark) ?? 0) + 1);
  }
  const marks = [...counts]
    .sort(([, one], [, other]) => other - one)
    .map(([mark]) => mark)
    .slice(0, mostMarks);
  const isComment = ({ text }: Sample) => !isSurelyHeading(text) && marks.includes(commentMark(text) ?? '');
  const lines = sample.filter((line) => !isComment(line));
  // Where nothing else stands, the mark belongs to the settings.
  if (lines.length === 0) return { marks: [], lines: sample, comments: [] };
  return { marks, lines, comments: sample.filter(isComment) };
}
