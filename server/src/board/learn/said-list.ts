import type { Catalog } from '../../catalog/catalog';
import type { BoardText } from '../../catalog/model/board-profile';
import type { DecimalMark } from '../listing/number-look';
import { lookOf } from '../listing/value-look';
import { parameterTaken } from './convert/taken';
import { type LearnedSetting, settingName } from './learned-settings';

/** What an empty list is written as where no listing has shown one. */
const usualNone = '-';

/**
 * How a board writes lists, by the first setting that is said to be one; null where none is. `wholesOf`: by a setting's
 * key, the parameters that it is said to hold whole.
 */
export function saidList(
  settings: readonly LearnedSetting[],
  wholesOf: (key: string) => readonly string[],
  mark: DecimalMark,
  catalog: Catalog,
): NonNullable<BoardText['list']> | null {
  const isOfWords = (means: string) => parameterTaken({ means }, catalog)?.parameter.kind === 'words';
  for (const setting of settings) {
    if (!wholesOf(settingName(setting)).some(isOfWords)) continue;
    const look = lookOf(setting.value, mark);
    if (look.kind === 'list') return { between: look.between, none: usualNone };
  }
  return null;
}
