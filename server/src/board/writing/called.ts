import type { CraftView } from '../../craft/view';
import { isOwnPath } from '../../language/path-text';
import type { SettingKey } from '../listing/listing';
import { settingText } from '../listing/setting-text';

/**
 * What a setting is called that goes to a board: as the board calls it, with its path behind where a script says it;
 * by its path where the board has no setting for it.
 */
export function calledOnBoard(view: CraftView, path: string, settings: readonly SettingKey[]): string {
  const all = settings.map(settingText);
  if (all.length === 0) return path;
  const names = all.length > 2 ? `${all.at(0)} to ${all.at(-1)}` : all.join(' and ');
  return view.craft.root.isBoardText || isOwnPath(path) ? names : `${names} (${path})`;
}
