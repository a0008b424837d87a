import type { CraftView } from '../craft/view';
import { type Forward, powerAt } from './airframe';
import { bestInWind } from './best-speeds';
import { type Discharge, flightEnds, flightWith } from './flight-time';

export interface Leg {
  /** Through the air, m/s. */
  readonly speed: number;
  /** Of a whole pack. */
  readonly flight: Discharge;
  /** Over the ground, m. */
  readonly distance: number;
}

/** Share of the pack's charge. */
export function usedOn({ flight: { from, to } }: Leg): number {
  return from - to;
}

/** As far as a full pack takes it until it is due to land, against such a wind; null where it makes no way. */
type LegOf = (at: Forward, wind: number) => Leg | null;

export function legIn(view: CraftView, likely: Forward): LegOf {
  const ends = flightEnds(view, 'landing');
  return (at, wind) => {
    const speed = ends === null ? null : bestInWind(at, wind, likely);
    if (ends === null || speed === null) return null;
    const flight = flightWith(at.carried, { power: powerAt(at, speed), current: 0 }, ends(at.carried));
    return flight === null ? null : { speed, flight, distance: (speed - wind) * flight.seconds };
  };
}

export interface BothWays {
  readonly against: Leg;
  readonly along: Leg;
}

export function waysIn(view: CraftView, likely: Forward): (at: Forward) => BothWays | null {
  const wind = view.quantity('craft.wind');
  const legOf = legIn(view, likely);
  return (at) => {
    if (wind === null) return null;
    const [against, along] = [legOf(at, wind), legOf(at, -wind)];
    return against === null || along === null ? null : { against, along };
  };
}
