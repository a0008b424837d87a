import type { BoardProfile, BoardSetting, BoardText } from '../../../catalog/model/board-profile';
import type { Listing } from '../../listing/listing';
import { settingKey } from '../../listing/setting-key';
import { profileOf } from '../../profile/profile';

/** A profile with more of how its board writes. */
export function withText(board: BoardProfile, more: Partial<BoardText>): BoardProfile {
  return board.text === undefined ? board : { ...board, text: { ...board.text, ...more } };
}

/**
 * A profile by which a text is read as `after` where it was read as `before`: with its forms, and a row for each
 * setting that is new. Rows whose setting stands in another group now go along with it. `fresh`: rows of the settings
 * of `after`, in their order.
 */
export function reread(
  board: BoardProfile,
  before: Listing,
  after: Listing,
  fresh: readonly BoardSetting[],
): BoardProfile {
  const profile = profileOf(board);
  const places = new Map(before.settings.map((setting) => [setting.at.name.start, setting]));
  const moved = new Map<BoardSetting, BoardSetting>();
  const added: BoardSetting[] = [];
  for (const [index, setting] of after.settings.entries()) {
    const row = fresh[index];
    if (row === undefined || profile?.find(setting.groups, setting.name, setting.occurrence) !== undefined)
      continue;
    const was = places.get(setting.at.name.start);
    const old =
      was === undefined || settingKey(was) === settingKey(setting)
        ? undefined
        : profile?.find(was.groups, was.name, was.occurrence)?.row.setting;
    if (old === undefined || moved.has(old)) added.push(row);
    else moved.set(old, inPlaceOf(old, row));
  }
  const settings = [...board.settings.map((row) => moved.get(row) ?? row), ...added];
  return withText({ ...board, settings }, { forms: after.forms });
}

/** What is known of a setting, under its name and group as they are now. */
function inPlaceOf(
  { group: _, occurrence: __, ...known }: BoardSetting,
  { group, occurrence }: BoardSetting,
): BoardSetting {
  return {
    ...(group === undefined ? {} : { group }),
    ...known,
    ...(occurrence === undefined ? {} : { occurrence }),
  };
}
