import { isBlank, quotedAt, quotedFrom } from '../text/characters';
import { withoutAnyBracket } from './beside-brackets';
import { commentMark } from './comments';

const usualMarks = ['#', '//', ';', ';;', '--', '!', '%', '~', '|', '*', '<-', '\u2190'] as const;

/** These begin a remark even where the listing has one only; the others where many lines have one. */
const sureMarks: ReadonlySet<string> = new Set(['#', '//']);

/** So many of the values have it at least. */
export const leastShare = 0.3;

/** What stands behind a mark that parts settings. */
const nextSetting = /^\s+[\p{L}\p{N}_.@-]+\s?[=:]/u;

/** What begins the remarks behind values. */
export function remarkMarks(values: readonly string[], comments: readonly string[]): readonly string[] {
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

export function withoutRemark(value: string, marks: readonly string[]): string {
  const places = marks.map((mark) => placeOf(value, mark)).filter((at) => at > 0);
  return places.length === 0 ? value : value.slice(0, Math.min(...places)).trimEnd();
}
