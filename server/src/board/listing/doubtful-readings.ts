import { commentMark, isAlwaysComment } from './find/comments';
import type { ListedSetting, Listing, Stretch } from './listing';

/** What makes a reading doubtful though each line of it was read. */
export type DoubtKind =
  | 'comments'
  | 'comment-within'
  | 'settings-within'
  | 'columns'
  | 'comma-behind'
  | 'mark-as-group';

/** Lines that were read and may say something else. */
export interface DoubtfulReading {
  readonly kind: DoubtKind;
  /** Of the first one, from 0. */
  readonly line: number;
  readonly count: number;
  /** What was read there. */
  readonly text: string;
}

type ValueDoubt = 'settings-within' | 'columns' | 'comma-behind';

/** A further name and its value behind a blank or a mark; three blanks in a row, where columns stand. */
const doubtful: ReadonlyMap<ValueDoubt, RegExp> = new Map([
  ['settings-within', /[\s,;][\p{L}_][\p{L}\p{N}_.-]{0,60}(?:=|: )\s?\S/u],
  ['columns', /\S {3,}\S/u],
  ['comma-behind', /,$/],
]);

/** A single one may be meant: a text that ends with a comma, or a name with blanks. */
const fewest = 2;

/** What of a listing was read and may be read wrongly: nothing of it is changed, it is told. */
export function doubtfulReadings(listing: Listing): readonly DoubtfulReading[] {
  const plain = listing.settings.filter(({ style }) => style.kind === 'plain');
  const inValues = [...doubtful].flatMap(([kind, form]) =>
    doubtAbout(listing, kind, valuePlaces(plain.filter(({ value }) => form.test(value)))),
  );
  const commented = plain.filter(({ value }) => /[\s,;]\/\*/.test(value)).map(({ at }) => at.value);
  return [
    ...commentDoubt(listing),
    ...doubtAbout(listing, 'comment-within', commented),
    ...inValues,
    ...doubtAbout(listing, 'mark-as-group', markGroups(listing)),
  ];
}

function valuePlaces(settings: readonly ListedSetting[]): readonly Stretch[] {
  return settings.length < fewest ? [] : settings.map(({ at }) => at.value);
}

/** Comments, where they are more than the settings: some boards write settings with such a mark, others with none. */
function commentDoubt(listing: Listing): readonly DoubtfulReading[] {
  const comments = listing.comments.filter(({ start, end }) =>
    mayBeSetting(listing.text.slice(start, end).trim()),
  );
  return comments.length > listing.settings.length && comments.length >= fewest
    ? doubtAbout(listing, 'comments', comments)
    : [];
}

/** Not behind a mark with which nothing but comments begins, and not a drawn line. */
function mayBeSetting(text: string): boolean {
  const mark = commentMark(text);
  return mark !== null && !isAlwaysComment(mark) && /[\p{L}\p{N}]/u.test(text);
}

/** Headings that are marks alone, such as a closing brace. */
function markGroups({ headings }: Listing): readonly Stretch[] {
  return headings.flatMap(({ groups, at }) => (/^[^\p{L}\p{N}\s]+$/u.test(groups.at(-1) ?? '') ? [at] : []));
}

function doubtAbout(
  { text }: Listing,
  kind: DoubtKind,
  places: readonly Stretch[],
): readonly DoubtfulReading[] {
  const [first] = places;
  if (first === undefined) return [];
  const line = text.slice(0, first.start).split(/\r\n|\r|\n/).length - 1;
  return [{ kind, line, count: places.length, text: text.slice(first.start, first.end).trim() }];
}
