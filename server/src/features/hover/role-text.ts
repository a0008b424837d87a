import { settingText } from '../../board/listing/setting-text';
import { decimalMarkOf } from '../../board/profile/profile';
import { ownLike, perCentChange, roleOfOwn } from '../../board/profile/roles';
import type { Catalog } from '../../catalog/catalog';
import type { BoardProfile } from '../../catalog/model/board-profile';
import { code, escaped } from '../markdown';

/** So many others are named. */
const most = 4;

/**
 * What one of a board's own settings is by its role, and how much more or less than others of its kind it holds.
 * `heldAt`: the value at a path under `own`. Null for one without a role.
 */
export function roleText(
  board: BoardProfile,
  path: string,
  catalog: Catalog,
  heldAt: (path: string) => string | null,
): string | null {
  const role = roleOfOwn(board, path, catalog);
  if (role === undefined) return null;
  const value = heldAt(path);
  const mark = decimalMarkOf(board);
  const beside = ownLike(board, path, catalog).flatMap((other) => {
    const held = heldAt(other.path);
    if (value === null || held === null) return [];
    const { groups, name, setting, item } = other.row;
    const called = settingText({ groups, name, occurrence: setting.occurrence ?? 1, item });
    const change = perCentChange(held, value, mark);
    if (change !== null) return [`- ${change} than ${code(called)}, which is ${code(held)}`];
    return held === value ? [`- the same as ${code(called)}`] : [];
  });
  const is = `By its role: **${escaped(role.parameter.title)}** (${code(role.path)}). Nobody knows its scale, so nothing is computed from it.`;
  return [is, ...beside.slice(0, most)].join('\n');
}
