import { isAsStated } from '../layer/as-stated';
import type { Stated } from '../listing/listing';
import type { DecimalMark } from '../listing/number-look';
import type { LearnedSetting } from './learned-settings';

/** What a profile keeps of a listing's statement: a range or words that the board's own value breaks are doubted. */
export function keptStatement({ value, stated }: LearnedSetting, mark: DecimalMark): Omit<Stated, 'at'> {
  if (stated === null) return nothing;
  const isKept = (stated.range === null && stated.words === null) || isAsStated(value, stated, mark);
  return isKept ? stated : { ...stated, range: null, words: null };
}

const nothing: Omit<Stated, 'at'> = { range: null, words: null, default: null, unit: null, remark: null };
