import { Additions } from '../../server/src/additions/additions';
import { BoardProfiles } from '../../server/src/additions/board-profiles';
import type { AdditionProblem } from '../../server/src/additions/problem';
import type { Catalog } from '../../server/src/catalog/catalog';
import { boardOf } from '../../server/src/workspace/listed-boards';
import { textOf, type Written } from './buzzer';
import { testBundle, testCatalog } from './catalog';

/** A workspace's additions from files by their names; a text stands as it is. */
export function additionsOf(files: Readonly<Record<string, Written | string>>): Additions {
  const additions = new Additions(testBundle, testCatalog, (file) => file);
  additions.update(new Map(Object.entries(files).map(([name, told]) => [name, textOf(told)])));
  return additions;
}

/** Files that were read, and what they come to. */
export interface ReadFiles {
  readonly catalog: Catalog;
  readonly problems: ReadonlyMap<string, readonly AdditionProblem[]>;
  textOf(file: string): string | undefined;
}

/** A workspace with one board profile that has been read, as if a script had named it. */
export function workspaceWithBoard(file: string, told: object | string): ReadFiles {
  const profiles = new BoardProfiles();
  profiles.update(file, boardOf(file), typeof told === 'string' ? told : JSON.stringify(told));
  const { board = null, problems = [] } = profiles.judged(file, testCatalog) ?? {};
  const read = new Map(board === null ? [] : [[board.name, board]]);
  return {
    catalog: testCatalog.withBoards({ read, unread: new Set(), faulty: new Set(), ask: () => {} }),
    problems: new Map([[file, problems]]),
    textOf: (asked) => profiles.textOf(asked),
  };
}

/** What is wrong with a file: the id, the text under the mark, the sentence. */
export function problemsOf(files: ReadFiles, file: string): readonly (readonly [string, string, string])[] {
  const text = files.textOf(file) ?? '';
  return (files.problems.get(file) ?? []).map(({ id, start, end, message }) => [
    id,
    text.slice(start, end),
    message,
  ]);
}
