import { ownPath } from '../board/listing/own-path';
import { sameValue } from '../board/listing/value-look';
import { decimalMarkOf } from '../board/profile/profile';
import { perCentChange, roleOfOwn } from '../board/profile/roles';
import type { HandOver } from '../catalog/model/hand-over';
import type { CraftView } from '../craft/view';
import { isOwnPath, ownGroup, pathText } from '../language/path-text';
import { uncapitalised } from '../units/capitals';

/**
 * How many settings the craft has that only its board knows, and how many of them are not as they were last handed
 * over; null where there are none.
 */
export function ownSettingsText(view: CraftView, handed: HandOver | null): string | null {
  // Most craft have none: their lines are not gone through.
  if (!view.craft.hasGroup(ownGroup)) return null;
  const paths = view.craft.settingPaths().filter((path) => isOwnPath(path) && view.isSet(path));
  if (paths.length === 0) return null;
  const count =
    paths.length === 1 ? "1 setting of the board's own" : `${paths.length} settings of the board's own`;
  if (handed === null) return count;
  const changed = changedOf(view, paths, handed);
  const since = 'since the last hand-over';
  if (changed.length === 0) return `${count}, none changed ${since}`;
  const roles = changed.flatMap(({ role }) => role ?? []).slice(0, mostRoles);
  const named = roles.length === 0 ? '' : ` (${roles.join(', ')})`;
  return `${count}, ${changed.length} changed ${since}${named}`;
}

/** So many changes of settings whose role is known are named. */
const mostRoles = 3;

interface ChangedRole {
  /** What it is by its role, and how much it changed; null for one without a role, and for what is no number. */
  readonly role: string | null;
}

function changedOf(
  view: CraftView,
  paths: readonly string[],
  { settings }: HandOver,
): readonly ChangedRole[] {
  const before = new Map(
    settings.map(({ groups, name, occurrence = 1, item, value }) => [
      pathText(ownPath({ groups, name, occurrence, item })),
      value,
    ]),
  );
  return paths.flatMap((path): readonly ChangedRole[] => {
    const value = view.value(path);
    const was = before.get(path);
    // What can't be read is told where it stands.
    if (value?.kind !== 'bare' || (was !== undefined && sameValue(was, value.value))) return [];
    return [{ role: was === undefined ? null : roleChange(view, path, was, value.value) }];
  });
}

function roleChange(view: CraftView, path: string, was: string, is: string): string | null {
  const board = view.craft.board();
  const role = board === undefined ? undefined : roleOfOwn(board, path, view.catalog);
  const change = perCentChange(was, is, decimalMarkOf(board));
  if (role === undefined || change === null) return null;
  const { title } = role.parameter;
  return `${uncapitalised(title)} ${change}`;
}
