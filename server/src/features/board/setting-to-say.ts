import type { BoardLayer } from '../../board/layer/layer';
import { settingName } from '../../board/learn/learned-settings';

/** The key of the setting on a line, from 0, of which nobody has said what it means; null for any other line. */
export function settingToSay({ settings, lines }: BoardLayer, line: number): string | null {
  const index = settings.findIndex(({ at }) => at.name.start.line === line);
  const setting = settings[index];
  const row = lines[index]?.found?.row.setting;
  const isSaid = row?.means !== undefined || row?.role !== undefined || row?.port !== undefined;
  return setting === undefined || isSaid ? null : settingName(setting);
}
