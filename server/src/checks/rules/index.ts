import type { CodeRule } from '../rule';

/** Every rule whose algorithm is code. */
export const codeRules: readonly CodeRule[] = [];
