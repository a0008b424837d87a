import type { CraftView } from '../craft/view';
import { toBase, unitOf } from '../units/unit';
import { packFlown } from './flights';

/** Magnets of a grade without a letter lose strength from here on, as makers of magnets list them; K. */
export const weakMagnets = toBase(80, unitOf('degC'));

/** What the magnets bear, K: as their grade is told, else the least of any; null where that can't be read. */
export function magnetLimit(view: CraftView): number | null {
  return view.quantityOr('motor.magnet-limit', weakMagnets);
}

/** Whether motors came down from a flight with as much as they should have at most, or more. */
export function cameDownHot(view: CraftView, flight: string): boolean {
  const temperature = view.quantityOr(`flight.${flight}.motor-temperature`, null);
  const limit = view.isSet('motor.temperature-limit')
    ? view.quantity('motor.temperature-limit')
    : magnetLimit(view);
  return temperature !== null && limit !== null && temperature >= limit;
}

/** What was read off the warmest bell soon after a landing; K. */
export interface BellReading {
  readonly flight: string;
  readonly bell: number;
  /** Of the day: as the flight notes it, else what the craft's figures are computed for. */
  readonly air: number;
  /** In the air with a pack, s; without end where nobody noted it: long enough to settle. */
  readonly seconds: number;
}

/** The readings of flights with the pack in view. */
export function bellReadings(view: CraftView): readonly BellReading[] {
  return view.members('flight').flatMap((flight) => {
    const noted = (setting: string) => view.quantityOr(`flight.${flight}.${setting}`, null);
    const bell = noted('motor-temperature');
    if (bell === null || packFlown(view, flight) !== view.pack) return [];
    const air = noted('air-temperature') ?? view.quantity('craft.air-temperature');
    const minutes = noted('minutes');
    const packs = view.isSet(`flight.${flight}.packs-flown`) ? view.count(`flight.${flight}.packs-flown`) : 1;
    if (air === null || bell <= air) return [];
    const seconds = minutes === null || packs === null ? Number.POSITIVE_INFINITY : minutes / packs;
    return [{ flight, bell, air, seconds }];
  });
}
