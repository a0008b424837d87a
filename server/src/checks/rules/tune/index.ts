import type { CodeRule } from '../../rule';
import { axesAlikeRules } from './axes-alike';
import { axisLimitRules } from './axis-limits';
import { curveRules } from './curves';
import { filterLimitRules } from './filter-limits';
import { filterPartRules } from './filter-parts';
import { filtersAlikeRules } from './filters-alike';
import { filtersOffRules } from './filters-off';
import { followingFilterRules } from './following-filters';
import { gainRules } from './gains';
import { notchRules } from './notches';
import { rateRules } from './rates';
import { responseTimeRules } from './response-time';
import { situationRules } from './situations';

/** Whether it flies well: rates, filters, gains, stick feel. */
export const tuneRules: readonly CodeRule[] = [
  ...rateRules,
  ...filterLimitRules,
  ...filtersOffRules,
  ...filterPartRules,
  ...filtersAlikeRules,
  ...axesAlikeRules,
  ...followingFilterRules,
  ...notchRules,
  ...curveRules,
  ...gainRules,
  ...axisLimitRules,
  ...situationRules,
  ...responseTimeRules,
];
