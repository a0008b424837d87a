import type { CodeRule } from '../../rule';
import { dateOf, flightDate, perFlight } from './flights';

/** Dates of flights against those of the craft and of its packs. */
export const flightDateRules: readonly CodeRule[] = [
  perFlight('remember/flown-before-built', (view, { name }) => {
    const built = dateOf(view, 'craft.built');
    const date = built === null ? null : flightDate(view, name);
    if (built === null || date === null || date >= built) return null;
    const related = [{ at: 'craft.built', message: 'Built here.' }];
    return { at: `flight.${name}.date`, values: { flight: name, date, built }, related };
  }),
  perFlight('remember/flown-before-bought', (view, flight) => {
    const { name } = flight;
    const date = flightDate(view, name);
    const pack = date === null ? null : flight.pack;
    const path = `pack.${pack}.bought`;
    const bought = pack === null ? null : dateOf(view, path);
    if (pack === null || bought === null || date === null || date >= bought) return null;
    const related = [{ at: path, message: 'Bought here.' }];
    return { at: `flight.${name}.date`, values: { flight: name, date, pack, bought }, related };
  }),
];
