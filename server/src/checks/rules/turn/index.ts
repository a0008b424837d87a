import type { CodeRule } from '../../rule';
import { motorBenchRules } from './motor-bench';
import { motorHeatRules } from './motor-heat';
import { motorLayoutRules } from './motor-layout';
import { motorLimitRules } from './motor-limits';
import { propellerRoomRules } from './propeller-room';
import { pulseSignalRules } from './pulse-signals';

/** Do the motors turn as the board thinks, and do they hear it in time? */
export const turnRules: readonly CodeRule[] = [
  ...motorLayoutRules,
  ...propellerRoomRules,
  ...motorLimitRules,
  ...motorHeatRules,
  ...motorBenchRules,
  ...pulseSignalRules,
];
