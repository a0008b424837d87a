import type { CraftView } from '../../craft/view';
import { isDerivativeUnfiltered, isGyroUnfiltered } from '../../figures/filter-stages';
import { toBase, unitOf } from '../../units/unit';
import type { CodeRule } from '../rule';
import { perFlight } from './flights';

/** Flights after which motors were too hot to touch, against filters that are off with that pack. */
export const flightHeatRules: readonly CodeRule[] = [
  perFlight('remember/warm-and-unfiltered', (view, { name, view: flown }) => {
    const at = `flight.${name}.motor-temperature`;
    const temperature = view.quantity(at);
    const filters = filtersOff(flown);
    if (temperature === null || temperature < tooHotToTouch || filters === null) return null;
    const values = { flight: name, temperature: view.shown(at), filters: filters.what };
    return { at, values, related: [{ at: filters.at, message: 'Off here.' }] };
  }),
];

const tooHotToTouch = toBase(60, unitOf('degC'));

function filtersOff(view: CraftView): { readonly what: string; readonly at: string } | null {
  const gyro = isGyroUnfiltered(view);
  const derivative = isDerivativeUnfiltered(view);
  if (!gyro && !derivative) return null;
  const at = gyro ? 'gyro.lowpass.shape' : 'derivative.lowpass.shape';
  if (gyro && derivative) return { what: 'every filter', at };
  return { what: gyro ? 'every filter of the gyro' : "the derivative's low-pass", at };
}
