import { estimatedMotorLag } from '../../../figures/motor-lag';
import type { CodeRule } from '../../rule';

/** A response time that was written down against the one that follows from motor and propeller. */
export const responseTimeRules: readonly CodeRule[] = [
  {
    ids: ['tune/response-time-implausible'],
    scope: 'pack',
    check(view, report) {
      const at = 'motor.response-time';
      const given = view.quantity(at);
      const usual = estimatedMotorLag(view)?.value;
      if (given === null || usual === undefined) return;
      if (given >= usual.low / slack && given <= usual.high * slack) return;
      const values = { given: view.shown(at), usual: view.amount(usual.likely, 'ms') };
      report({ id: 'tune/response-time-implausible', at, values });
    },
  },
];

/** How many times beyond the estimate's own spread. A choice of ours. */
const slack = 2;
