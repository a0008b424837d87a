import type { BoardSetting } from '../../catalog/model/board-profile';
import type { DecimalMark } from '../listing/number-look';
import { keptStatement } from './kept-statement';
import type { LearnedSetting } from './learned-settings';

/** The row of a profile that lists a setting, with what the listing states of it and with no meaning yet. */
export function rowOfSetting(setting: LearnedSetting, mark: DecimalMark): BoardSetting {
  const { groups, name, occurrence } = setting;
  const { range, words, default: byDefault, unit, remark } = keptStatement(setting, mark);
  const [group, ...inner] = groups;
  return {
    ...(group === undefined ? {} : { group: inner.length === 0 ? group : [...groups] }),
    name,
    ...(occurrence === 1 ? {} : { occurrence }),
    ...(range === null ? {} : { range: [range.low, range.high] as const }),
    ...(words === null ? {} : { words: [...words] }),
    ...(byDefault === null ? {} : { default: byDefault }),
    ...(unit === null ? {} : { unit }),
    ...(remark === null ? {} : { remark }),
  };
}
