import { checksOf } from '../catalog/catalog';
import type { Addition } from '../catalog/model/addition';
import type { Bundle } from '../catalog/model/bundle';
import type { Level } from '../catalog/model/check';
import type { Replacement } from '../catalog/replacements';
import { builtInNames, namesReplaced } from './names';

/** All that the files of a workspace have in place of something else, in their order. */
export function replacementsIn(
  files: ReadonlyMap<string, Addition>,
  bundle: Bundle,
  nameOf: (file: string) => string,
): readonly Replacement[] {
  const taken = builtInNames(bundle);
  const levels = new Map(checksOf(bundle).map(({ id, level }) => [id, level]));
  return [...files].flatMap(([file, addition]) => {
    const found = namesReplaced(addition, file, taken).map(({ what, name }): Replacement => {
      const now = addition.checks.find(({ id }) => id === name)?.level;
      return {
        what,
        name,
        file: nameOf(file),
        levels: what === 'check' ? change(levels.get(name), now) : null,
      };
    });
    for (const { id, level } of addition.checks) levels.set(id, level);
    return found;
  });
}

function change(before: Level | undefined, now: Level | undefined): Replacement['levels'] {
  return before === undefined || now === undefined ? null : { before, now };
}
