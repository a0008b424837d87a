import type { CodeRule } from '../../rule';
import { armSwitchRules } from './arm-switch';
import { switchChannelRules } from './switch-channel';
import { switchNeedsRules } from './switch-needs';
import { switchOverlapRules } from './switch-overlap';
import { switchReachRules } from './switch-reach';

/** Whether the craft obeys: channels, switches, what a lost link does. */
export const obeyRules: readonly CodeRule[] = [
  ...armSwitchRules,
  ...switchOverlapRules,
  ...switchReachRules,
  ...switchChannelRules,
  ...switchNeedsRules,
];
