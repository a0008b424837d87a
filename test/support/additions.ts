import { join } from 'node:path';
import { compileCatalog } from '../../server/build/compile-catalog';
import { Additions } from '../../server/src/additions/additions';
import { loadCatalog } from '../../server/src/catalog/catalog';
import { textOf, type Written } from './buzzer';

const { bundle } = compileCatalog(join(__dirname, '../..'));

/** A workspace's additions from files by their names; a text stands as it is. */
export function additionsOf(files: Readonly<Record<string, Written | string>>): Additions {
  const additions = new Additions(
    bundle,
    loadCatalog(bundle),
    (file) => file,
    (file) => (file.startsWith('boards/') ? 'board' : 'addition'),
  );
  additions.update(new Map(Object.entries(files).map(([name, told]) => [name, textOf(told)])));
  return additions;
}

/** What is wrong with a file: the id, the text under the mark, the sentence. */
export function problemsOf(
  additions: Additions,
  file: string,
): readonly (readonly [string, string, string])[] {
  const text = additions.textOf(file) ?? '';
  return (additions.problems.get(file) ?? []).map(({ id, start, end, message }) => [
    id,
    text.slice(start, end),
    message,
  ]);
}
