import type { CraftView } from '../../../craft/view';
import { figureOf } from '../../../figures';
import { toBase, unitOf } from '../../../units/unit';
import type { CodeRule } from '../../rule';
import { type Flight, perFlight } from './flights';

/** What was flown in a hover against what is estimated for it with the pack that was in. */
export const flightHoverRules: readonly CodeRule[] = [
  perFlight('remember/hover-unlike-estimate', (view, flight) => {
    for (const part of ['hover-throttle', 'hover-current'] as const) {
      const found = unlike(view, flight, part);
      if (found !== null) return found;
    }
    return null;
  }),
];

function unlike(view: CraftView, flight: Flight, part: 'hover-throttle' | 'hover-current') {
  const at = `flight.${flight.name}.${part}`;
  const noted = view.quantity(at);
  if (noted === null || flight.pack === null) return null;
  const estimate = figureOf(flight.view, part);
  if (estimate === null) return null;
  const unit = unitOf(estimate.unit);
  const [low, high] = [toBase(estimate.low, unit), toBase(estimate.high, unit)];
  if (noted >= low / slack && noted <= high * slack) return null;
  const values = {
    flight: flight.name,
    what: part.replace('hover-', ''),
    flown: view.shown(at),
    low: view.amount(low, estimate.unit),
    high: view.amount(high, estimate.unit),
  };
  return { at, values };
}

/** Wind, a tired pack and a hover that was none: half as much again. Common practice. */
const slack = 1.5;
