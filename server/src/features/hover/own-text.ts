import { rowOfOwn } from '../../board/profile/own-rows';
import { titleOf } from '../../catalog/board-title';
import type { FoundParameter, Group } from '../../catalog/catalog';
import { code, escaped } from '../markdown';
import type { Snapshot } from '../snapshot';
import { parameterTitle } from './parameter-text';
import { roleText } from './role-text';
import { statedOfOwn, statedText } from './stated-text';
import { valueHere } from './value-here';

/** A setting that only the board knows: what it holds, where that was set, and what the board says of it. */
export function ownSettingText(snapshot: Snapshot, found: FoundParameter): readonly string[] {
  return [parameterTitle(found, found.path), ...valueHere(snapshot, found), ...saidByBoard(snapshot, found)];
}

/** The value of one of the board's own settings with the pack in view; null where it is not set. */
export function ownValue({ craft, pack }: Snapshot, path: string): string | null {
  const value = craft.setting(path, pack)?.value;
  return value?.kind === 'bare' ? value.value : null;
}

/** What a section of such settings is for, and how many the craft has in it. */
export function ownSectionText(
  { craft }: Snapshot,
  path: string,
  { title, summary }: Group,
): readonly string[] {
  const count = craft.settingPaths().filter((one) => one.startsWith(`${path}.`)).length;
  const settings = count === 1 ? 'One setting stands' : `${count} settings stand`;
  return [`**${escaped(title)}** · ${code(path)}`, escaped(summary), `${settings} here.`];
}

function saidByBoard(snapshot: Snapshot, { path, parameter }: FoundParameter): readonly string[] {
  const board = snapshot.craft.board();
  const means = board === undefined ? undefined : rowOfOwn(board, path)?.row.setting.means;
  if (board !== undefined && means !== undefined)
    return [
      `On ${escaped(titleOf(board))} this is ${code(means)}; under \`own\` it is kept as it is written.`,
    ];
  const stated = statedText(statedOfOwn(snapshot, path));
  const role =
    board === undefined ? null : roleText(board, path, snapshot.catalog, (one) => ownValue(snapshot, one));
  return [
    ...(role === null ? [] : [role]),
    ...(stated === null ? [] : [stated]),
    ...(role === null ? [escaped(parameter.summary)] : []),
  ];
}
