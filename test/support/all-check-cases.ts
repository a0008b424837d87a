import type { GroupCases } from './check-cases';
import { lineCases } from './check-cases/line';
import { obeyCases } from './check-cases/obey';
import { powerCases } from './check-cases/power';
import { rememberCases } from './check-cases/remember';
import { safeCases } from './check-cases/safe';
import { seeCases } from './check-cases/see';
import { tuneCases } from './check-cases/tune';
import { turnCases } from './check-cases/turn';
import { wireCases } from './check-cases/wire';

/** Every check's smallest script that triggers it, but for those of a board's text. */
export const checkCases: readonly GroupCases[] = [
  lineCases,
  obeyCases,
  powerCases,
  rememberCases,
  safeCases,
  seeCases,
  tuneCases,
  turnCases,
  wireCases,
];
