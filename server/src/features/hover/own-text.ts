import { rowOfOwn } from '../../board/profile/own-rows';
import { titleOf } from '../../catalog/board-title';
import type { FoundParameter, Group } from '../../catalog/catalog';
import type { BoardSetting } from '../../catalog/model/board-profile';
import { code, escaped } from '../markdown';
import type { Snapshot } from '../snapshot';
import { parameterTitle } from './parameter-text';
import { valueHere } from './value-here';

/** A setting that only the board knows: what it holds, where that was set, and what the board says of it. */
export function ownSettingText(snapshot: Snapshot, found: FoundParameter): readonly string[] {
  return [parameterTitle(found, found.path), ...valueHere(snapshot, found), ...saidByBoard(snapshot, found)];
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

function saidByBoard({ craft }: Snapshot, { path, parameter }: FoundParameter): readonly string[] {
  const board = craft.board();
  const row = board === undefined ? undefined : rowOfOwn(board, path)?.row;
  if (board === undefined || row === undefined) return [escaped(parameter.summary)];
  const { setting } = row;
  const title = escaped(titleOf(board));
  if (setting.means !== undefined)
    return [`On ${title} this is ${code(setting.means)}; under \`own\` it is kept as it is written.`];
  const said = [statedText(setting), ...(setting.remark === undefined ? [] : [escaped(setting.remark)])];
  const stated = said.filter((text) => text !== '').join(' ');
  return [...(stated === '' ? [] : [`**${title} says:** ${stated}`]), escaped(parameter.summary)];
}

/** "0 to 2000, in ms, 150 by default." as the board's own listing states it; empty where it states nothing. */
function statedText({ range, words, unit, default: assumed }: BoardSetting): string {
  const parts = [
    ...(range === undefined ? [] : [`${code(range[0])} to ${code(range[1])}`]),
    ...(words === undefined ? [] : [`one of ${words.map(code).join(', ')}`]),
    ...(unit === undefined ? [] : [`in ${escaped(unit)}`]),
    ...(assumed === undefined ? [] : [`${code(assumed)} by default`]),
  ];
  return parts.length === 0 ? '' : `${parts.join(', ')}.`;
}
