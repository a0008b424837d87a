import { type Lesson, partName, type TaughtKind } from '../../board/learn/teach/lesson';
import { teachCommand } from '../../board/learn/teach/teach-command';
import { teachLine } from '../../board/learn/teach/teach-line';
import {
  type DoubtfulReading,
  type DoubtKind,
  doubtfulReadings,
} from '../../board/listing/doubtful-readings';
import type { Listing } from '../../board/listing/listing';
import { readListing } from '../../board/listing/read-listing';
import type { BoardText } from '../../catalog/model/board-profile';
import { UsageError } from '../outcome';

const kinds: readonly TaughtKind[] = ['setting', 'comment', 'heading'];

/** A listing read with what was said of its lines, one after the other. */
export interface LessonsTaken {
  readonly listing: Listing;
  /** A line each, for the person who said it. */
  readonly said: readonly string[];
}

/** `--line`: `12=comment`, `12=setting`, `12=setting 8000`, with the lines counted from 1. */
export function takeLessons(listing: Listing, given: readonly string[]): LessonsTaken {
  let now = listing;
  const said: string[] = [];
  for (const text of given) {
    const lesson = lessonIn(text);
    const taught = teachLine(now, lesson);
    if (taught.kind === 'refused')
      throw new UsageError(`--line ${text}: ${taught.reason}${help(lesson, taught.asks)}`);
    now = readListing(now.text, taught.forms);
    said.push(lessonText(lesson, taught.alike));
  }
  return { listing: now, said };
}

function lessonIn(text: string): Lesson {
  const [, number = '', word = '', part = null] = /^(\d{1,9})=(\w+)(?:\s+(.*))?$/s.exec(text) ?? [];
  const as = kinds.find((kind) => kind === word);
  if (as === undefined || number === '0')
    throw new UsageError(
      `--line takes the number of a line and what it is, such as 12=setting, 12=comment or 12=heading, not "${text}"`,
    );
  return { line: Number(number) - 1, as, part };
}

function help({ line, as }: Lesson, asks: boolean): string {
  return asks ? ` Say --line '${line + 1}=${as} <${partName[as]}>'.` : '';
}

/** So many lines are named. */
const mostNamed = 20;

function lessonText({ line, as }: Lesson, alike: readonly number[]): string {
  const named = alike.slice(0, mostNamed).map((one) => String(one + 1));
  const more = alike.length > mostNamed ? ` and ${alike.length - mostNamed} more` : '';
  const others =
    alike.length === 0
      ? ''
      : `, and so ${alike.length === 1 ? 'is line' : 'are lines'} ${named.join(', ')}${more}`;
  return `line ${line + 1} is a ${as}${others}`;
}

/** What is left over, and how to say what it is. */
export function leftText({ text, left }: Listing): readonly string[] {
  if (left.length === 0) return [];
  const shown = left
    .slice(0, mostNamed)
    .map(({ number, at }) => `line ${number + 1}: ${text.slice(at.start, at.end)}`);
  return [
    'Not understood:',
    ...shown.map((line) => `  ${line}`),
    ...(left.length > mostNamed ? [`  and ${left.length - mostNamed} more`] : []),
    `Say what such a line is: --line '${(left[0]?.number ?? 0) + 1}=setting', or comment, or heading.`,
  ];
}

const doubtWords: Readonly<Record<DoubtKind, (count: number) => string>> = {
  comments: (count) =>
    `${count} lines were taken for comments, more than for settings. Where they hold settings, nothing of them is compared or written: write name and value on one line, with blanks in place of that mark, and say with --command what the board takes`,
  'comment-within': (count) =>
    `${count === 1 ? 'A value holds' : `${count} values hold`} what looks like a comment: take it out of the text if it is one`,
  'settings-within': (count) =>
    `${count} values look as if they held further settings. They are compared and written as one text each: put each on a line of its own to have them apart, and say with --command what the board takes`,
  columns: (count) =>
    `${count} values have wide gaps, as columns have, and are compared and written as one text each: put each value on a line of its own, with a name, to have them apart, and say with --command what the board takes`,
  'comma-behind': (count) => `${count} values were read with the comma behind them: take it out of the text`,
  'mark-as-group': (count) =>
    `${count === 1 ? 'A mark was' : `${count} marks were`} taken for the name of a group: take such a line out of the text, or say what it is with --line`,
};

/** What was read and may be wrong, with its first line. */
export function doubtText(listing: Listing): readonly string[] {
  const doubts = doubtfulReadings(listing);
  const said = ({ kind, line, count, text }: DoubtfulReading) =>
    `  ${doubtWords[kind](count)}. First: line ${line + 1}: ${text}`;
  return doubts.length === 0 ? [] : ['Read, but doubtful:', ...doubts.map(said)];
}

/** `--command`: what would be typed to set one setting as it stands; `same`: what the listing shows. */
export function commandIn(
  example: string | undefined,
  { settings, forms }: Listing,
): Pick<BoardText, 'command' | 'commandPath'> {
  if (example === undefined) return {};
  if (example === 'same') return { command: 'same' };
  const taught = teachCommand(example, settings, forms);
  if (taught.kind === 'refused') throw new UsageError(`--command "${example}": ${taught.reason}`);
  return taught.command;
}
