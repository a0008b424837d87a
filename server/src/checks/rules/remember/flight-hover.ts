import { beliefsOf } from '../../../figures/beliefs';
import type { ReadingKind } from '../../../figures/flight-readings';
import { suspectsOf } from '../../../figures/measured';
import type { CodeRule } from '../../rule';
import { perFlight } from './flights';

const units: ReadonlyMap<ReadingKind, string> = new Map([
  ['hover-throttle', '%'],
  ['hover-current', 'A'],
]);

/** What was flown in a hover against what was estimated for it with the pack that was in. */
export const flightHoverRules: readonly CodeRule[] = [
  perFlight('remember/hover-unlike-estimate', (view, { name }) => {
    const judged = beliefsOf(view)?.value.judged ?? [];
    const apart = judged.find(({ reading, isTaken }) => reading.flight === name && !isTaken);
    const unit = apart === undefined ? undefined : units.get(apart.reading.kind);
    if (apart === undefined || apart.estimate === null || unit === undefined) return null;
    const { reading, estimate } = apart;
    const at = `flight.${name}.${reading.kind}`;
    const values = {
      flight: name,
      what: reading.kind.replace('hover-', ''),
      flown: view.shown(at),
      low: view.amount(estimate.low, unit),
      high: view.amount(estimate.high, unit),
      suspects: suspectsOf(apart),
    };
    return { at, values };
  }),
];
