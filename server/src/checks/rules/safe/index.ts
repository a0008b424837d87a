import type { CodeRule } from '../../rule';
import { armingAskRules } from './arming-asks';
import { readAsRules } from './read-as';
import { signalLostRules } from './signal-lost';

/** Do the motors turn only when meant, and is a lost craft found again? */
export const safeRules: readonly CodeRule[] = [...readAsRules, ...armingAskRules, ...signalLostRules];
