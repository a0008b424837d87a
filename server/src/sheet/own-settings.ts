import { ownPath } from '../board/listing/own-path';
import { sameValue } from '../board/listing/value-look';
import type { HandOver } from '../catalog/model/hand-over';
import type { CraftView } from '../craft/view';
import { isOwnPath, pathText } from '../language/path-text';

/**
 * How many settings the craft has that only its board knows, and how many of them are not as they were last handed
 * over; null where there are none.
 */
export function ownSettingsText(view: CraftView, handed: HandOver | null): string | null {
  const paths = view.craft.settingPaths().filter((path) => isOwnPath(path) && view.isSet(path));
  if (paths.length === 0) return null;
  const count =
    paths.length === 1 ? "1 setting of the board's own" : `${paths.length} settings of the board's own`;
  if (handed === null) return count;
  const changed = changedOf(view, paths, handed);
  const since = 'since the last hand-over';
  return changed === 0 ? `${count}, none changed ${since}` : `${count}, ${changed} changed ${since}`;
}

function changedOf(view: CraftView, paths: readonly string[], { settings }: HandOver): number {
  const before = new Map(
    settings.map(({ groups, name, occurrence = 1, item, value }) => [
      pathText(ownPath({ groups, name, occurrence, item })),
      value,
    ]),
  );
  return paths.filter((path) => {
    const value = view.value(path);
    const was = before.get(path);
    // What can't be read is told where it stands.
    return value?.kind === 'bare' && (was === undefined || !sameValue(was, value.value));
  }).length;
}
