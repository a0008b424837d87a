import type { CraftView } from '../../../craft/view';
import { isUnfiltered, unfilteredAt } from '../../../figures/filter-stages';
import { toBase, unitOf } from '../../../units/unit';
import type { CodeRule } from '../../rule';
import { perFlight } from './flights';

/** Flights after which motors were too hot to touch, against filters that are off with that pack. */
export const flightHeatRules: readonly CodeRule[] = [
  perFlight('remember/warm-and-unfiltered', (view, flight) => {
    const at = `flight.${flight.name}.motor-temperature`;
    const temperature = view.quantity(at);
    if (temperature === null || temperature < tooHotToTouch) return null;
    const filters = filtersOff(flight.view);
    if (filters === null) return null;
    const values = { flight: flight.name, temperature: view.shown(at), filters: filters.what };
    return { at, values, related: [{ at: filters.at, message: 'Off here.' }] };
  }),
];

const tooHotToTouch = toBase(60, unitOf('degC'));

function filtersOff(view: CraftView): { readonly what: string; readonly at: string } | null {
  const gyro = isUnfiltered(view, 'gyro');
  const derivative = isUnfiltered(view, 'derivative');
  if (!gyro && !derivative) return null;
  const at = unfilteredAt(view, gyro ? 'gyro' : 'derivative');
  if (gyro && derivative) return { what: 'every filter', at };
  return { what: gyro ? 'every filter of the gyro' : 'every filter of the derivative', at };
}
