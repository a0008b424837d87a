import type { CodeRule } from '../rule';
import { boardRules } from './board-step';

/** Every rule whose algorithm is code. */
export const codeRules: readonly CodeRule[] = [...boardRules];
