import { oneGroup } from '../../board/one-group';
import { membersOf, openMember, withMember } from '../../board/profile/members';
import type { TranslatedLine, Translation, Trouble } from '../../board/translation';
import type { Catalog } from '../../catalog/catalog';
import type { Check } from '../../catalog/model/check';
import { suggestWord } from '../../catalog/suggest';
import type { Finding } from '../../checks/report/finding';
import { sentenceOf } from '../../checks/report/render';
import { type Range, rangeInLine, type TextEdit } from '../range';

/** Something wrong with a line as a line of its board, where it stands in the board's text. */
export interface BoardProblem {
  readonly check: Check;
  readonly message: string;
  readonly advice: string;
  readonly range: Range;
  readonly fixes: readonly { readonly title: string; readonly edits: readonly TextEdit[] }[];
}

/** What the profile itself has to say about a text. */
export function boardProblems({ profile, lines }: Translation, catalog: Catalog): readonly BoardProblem[] {
  const names = profile.rows.map(({ groups, name, setting }) => ({
    group: oneGroup(groups),
    name,
    members: [...(membersOf(profile.board, setting.means)?.values() ?? [])],
  }));
  return lines.flatMap((line, number) => {
    if (line.trouble === null) return [];
    const near = line.trouble.id === 'board/unknown-setting' ? nearNames(names, line) : [];
    return problemOf(catalog, line.trouble, number, near);
  });
}

/** A text that no profile knows. */
export function noProfileProblem(catalog: Catalog): readonly BoardProblem[] {
  return problemOf(catalog, { id: 'board/no-profile', values: {}, start: 0, end: 0 }, 0, []);
}

/**
 * Findings of the script that a text was translated to, as far as the text can answer for them: of a value that
 * the board itself can't read, the profile says what is wrong.
 */
export function isToldByProfile({ check, place }: Finding, { lines }: Translation): boolean {
  const trouble = lines[place.script.lineNumber(place.line)]?.trouble;
  return trouble?.id === 'board/value-unclear' && check.id.startsWith('line/');
}

function problemOf(
  catalog: Catalog,
  trouble: Omit<Trouble, 'id'> & { readonly id: Trouble['id'] | 'board/no-profile' },
  number: number,
  near: readonly string[],
): readonly BoardProblem[] {
  const check = catalog.check(trouble.id);
  if (check === undefined) return [];
  const values = { ...trouble.values, meant: near[0] ?? '' };
  const range = rangeInLine(number, trouble);
  return [
    {
      check,
      message: sentenceOf(check.message, values),
      advice: sentenceOf(check.advice, values),
      range,
      fixes: near.map((name) => ({ title: `Write ${name}`, edits: [{ range, newText: name }] })),
    },
  ];
}

interface BoardName {
  readonly group: string;
  /** `{member}` where the board writes that of a member. */
  readonly name: string;
  readonly members: readonly string[];
}

/** A name with each member that it may be about: those that the profile spells, or the numbers that were typed. */
function spelled({ name, members }: BoardName, typed: string): readonly string[] {
  if (!name.includes(openMember)) return [name];
  const written = members.length > 0 ? members : (typed.match(/\d+/g) ?? []);
  return written.map((member) => withMember(name, member));
}

/** Names of the line's group come first: a slip seldom changes both. */
function nearNames(names: readonly BoardName[], { line }: TranslatedLine): readonly string[] {
  if (line.kind !== 'setting') return [];
  const { group, name } = line;
  const own = names.filter((one) => one.group === group).flatMap((one) => spelled(one, name.text));
  return suggestWord(own, name.text).slice(0, 3);
}
