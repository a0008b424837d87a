import type { CodeRule } from '../../rule';
import { boardTextRules } from './board-text';
import { flightDateRules } from './flight-dates';
import { flightHeatRules } from './flight-heat';
import { flightHoverRules } from './flight-hover';
import { flightMinutesRules } from './flight-minutes';
import { flightPackRules } from './flight-packs';
import { logMemoryRules } from './log-memory';

/** What flights and logs tell. */
export const rememberRules: readonly CodeRule[] = [
  ...boardTextRules,
  ...flightHeatRules,
  ...flightMinutesRules,
  ...flightPackRules,
  ...flightDateRules,
  ...flightHoverRules,
  ...logMemoryRules,
];
