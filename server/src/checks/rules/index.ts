import type { CodeRule } from '../rule';
import { boardRules } from './line/board-step';
import { obeyRules } from './obey';
import { powerRules } from './power';
import { rememberRules } from './remember';
import { safeRules } from './safe';
import { seeRules } from './see';
import { tuneRules } from './tune';
import { turnRules } from './turn';
import { wireRules } from './wire';

/** Every rule whose algorithm is code. */
export const codeRules: readonly CodeRule[] = [
  ...boardRules,
  ...wireRules,
  ...obeyRules,
  ...turnRules,
  ...tuneRules,
  ...powerRules,
  ...seeRules,
  ...safeRules,
  ...rememberRules,
];
