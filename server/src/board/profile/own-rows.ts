import type { BoardProfile } from '../../catalog/model/board-profile';
import { pathText, stepsOf } from '../../language/path-text';
import { ownPath, settingOfOwnPath } from '../listing/own-path';
import { openMember } from './members';
import { type ProfileRow, profileOf, type RowFound, rowsOf } from './profile';

/** The row of a board's profile for a setting that a script has under `own`; undefined where it lists none. */
export function rowOfOwn(board: BoardProfile, path: string): RowFound | undefined {
  const key = settingOfOwnPath(stepsOf(path));
  return key === null ? undefined : profileOf(board)?.find(key.groups, key.name, key.occurrence, key.item);
}

/** A setting that a board has and that nobody has given a meaning. */
export interface OwnRow {
  readonly path: string;
  readonly row: ProfileRow;
}

const known = new WeakMap<BoardProfile, readonly OwnRow[]>();

/** What a script can set under `own` by a board's profile, in the board's order. */
export function ownRows(board: BoardProfile): readonly OwnRow[] {
  const before = known.get(board);
  if (before !== undefined) return before;
  const made = rowsOf(board).flatMap((row) => {
    const { groups, name, setting, item } = row;
    const isOpen = [...groups, name].some((step) => step.includes(openMember));
    if (setting.means !== undefined || isOpen) return [];
    return [{ path: pathText(ownPath({ groups, name, occurrence: setting.occurrence ?? 1, item })), row }];
  });
  known.set(board, made);
  return made;
}
