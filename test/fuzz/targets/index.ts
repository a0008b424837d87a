import type { Target } from '../target';
import { additions, profiles } from './additions';
import { captures } from './captures';
import { checks } from './checks';
import { documents } from './documents';
import { expressions } from './expressions';
import { formatting } from './formatting';
import { handingOver } from './handing-over';
import { learning } from './learning';
import { lines } from './lines';
import { listing } from './listing';
import { messages } from './messages';
import { recordings } from './recordings';
import { wholeWay } from './whole-way';

/** Everything that takes in what others wrote. */
export const targets: readonly Target[] = [
  lines,
  documents,
  formatting,
  expressions,
  checks,
  additions,
  profiles,
  captures,
  handingOver,
  listing,
  learning,
  wholeWay,
  messages,
  recordings,
];

/** How many of a run's inputs each target gets; at least one. */
export function shared(inputs: number, among: readonly Target[]): readonly (readonly [Target, number])[] {
  const whole = among.reduce((sum, { share }) => sum + share, 0);
  return among.map((target) => [target, Math.max(1, Math.round((inputs * target.share) / whole))]);
}
