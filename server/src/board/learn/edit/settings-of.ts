import type { BoardProfile } from '../../../catalog/model/board-profile';
import type { Listing } from '../../listing/listing';
import { openMember } from '../../profile/members';
import { decimalMarkOf, rowsOf } from '../../profile/profile';
import { type LearnedSetting, learnedLookOf, learnedSettings } from '../learned-settings';

/**
 * The settings of a board that something may be said of: those of its text, or, where none is at hand, those that its
 * profile lists. A profile holds no captured values: what it states stands in for them.
 */
export function settingsToSay(board: BoardProfile, listing: Listing | null): readonly LearnedSetting[] {
  return listing === null ? settingsOfRows(board) : learnedSettings(listing);
}

function settingsOfRows(board: BoardProfile): readonly LearnedSetting[] {
  const rows = rowsOf(board).filter(
    ({ groups, name, item = 1 }) => item === 1 && ![...groups, name].some((one) => one.includes(openMember)),
  );
  return rows.map(({ groups, name, setting }): LearnedSetting => {
    const { occurrence = 1, range, words, unit, remark } = setting;
    const value = setting.default ?? words?.[0] ?? range?.[0] ?? '';
    const stated = {
      range: range === undefined ? null : { low: range[0], high: range[1] },
      words: words ?? null,
      default: setting.default ?? null,
      unit: unit ?? null,
      remark: remark ?? null,
      at: { start: 0, end: 0 },
    };
    const look = learnedLookOf(value, decimalMarkOf(board));
    return { groups, name, occurrence, value, ...look, stated };
  });
}
