import type { CodeRule } from '../../rule';
import { cellCountRules } from './cell-count';
import { cellVoltageRules } from './cell-voltages';
import { packCurrentRules } from './pack-currents';
import { packInputRules } from './pack-input';
import { packResistanceRules } from './pack-resistance';

/** Does the pack suit the craft, and is it watched rightly? */
export const powerRules: readonly CodeRule[] = [
  ...cellVoltageRules,
  ...cellCountRules,
  ...packInputRules,
  ...packCurrentRules,
  ...packResistanceRules,
];
