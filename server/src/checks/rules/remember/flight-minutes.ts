import { figureOf } from '../../../figures';
import type { CodeRule } from '../../rule';
import { perFlight } from './flights';

/** Flights that lasted longer than the packs that they were flown on can hover. */
export const flightMinutesRules: readonly CodeRule[] = [
  perFlight('remember/minutes-implausible', (view, flight) => {
    const { name } = flight;
    const at = `flight.${name}.minutes`;
    const minutes = view.quantity(at);
    const pack = minutes === null ? null : flight.pack;
    if (pack === null || minutes === null) return null;
    const hover = figureOf(flight.view, 'minutes-to-landing')?.high;
    if (hover === undefined) return null;
    const packs = view.count(`flight.${name}.packs-flown`) ?? 1;
    if (minutes / 60 <= most * packs * hover) return null;
    const count = packs === 1 ? `one charge of ${pack}` : `${packs} charges of ${pack}`;
    const values = {
      flight: name,
      minutes: view.shown(at),
      packs: count,
      pack,
      hover: view.amount(60 * hover, 'min'),
    };
    return { at, values };
  }),
];

/** Flown gently a craft stays up a little longer than it hovers on the spot. Common practice. */
const most = 1.5;
