import type { CraftView } from '../craft/view';
import { chargeWhenDownTo, type PackLoad, secondsToUse } from '../physics/discharge';
import { needsForThrust } from '../physics/drive';
import { type Carried, packInFlight } from './carried';
import { landingCell, packCount, packQuantity, warningCell } from './pack-in-view';
import { fine } from './why';

/** Where a flight ends: at the first of these. */
export interface FlightEnd {
  /** Share of its charge that is left in the pack then. */
  readonly charge: number;
  /** Of the pack under its load, V. */
  readonly voltage: number;
}

/** A flight of one load, from a pack fresh from the charger. */
export interface Discharge {
  readonly seconds: number;
  /** Shares of the pack's charge. */
  readonly from: number;
  readonly to: number;
}

/** Null where the pack is down to the end from the start. */
export function flightWith(carried: Carried, load: PackLoad, end: FlightEnd): Discharge | null {
  const pack = packInFlight(carried);
  const from = carried.pack.full;
  const to = Math.max(end.charge, chargeWhenDownTo(pack, load, end.voltage));
  const seconds = to < from ? secondsToUse(pack, load, from, to) : null;
  return seconds === null ? null : { seconds, from, to };
}

/** Hovering: it also ends where the motors can no longer hold the craft up. */
export function hoverFlight(carried: Carried, end: FlightEnd): Discharge | null {
  const { load, voltage } = needsForThrust(carried.drive, carried.weight);
  return flightWith(carried, load, { ...end, voltage: Math.max(end.voltage, voltage) });
}

/** What a flight lasts to: by what it is asked for, and what ends it. */
export const flightGoals = {
  landing: {
    words: 'until landing',
    ends: 'the landing voltage',
    from: ['power.charge-reserve', 'power.land-cell'],
  },
  warning: {
    words: 'until the warning',
    ends: 'the voltage of the warning',
    from: ['power.used-warning', 'power.warn-cell'],
  },
} as const;

export type FlightGoal = keyof typeof flightGoals;

/**
 * Where a flight with the pack in view ends for its pilot, whatever else is in doubt: at a voltage of the cells, or by
 * the charge: at a landing with the reserve left, at a warning with the share of the printed charge gone that the script
 * warns at. Null where that is not known.
 */
export function flightEnds(view: CraftView, goal: FlightGoal): ((carried: Carried) => FlightEnd) | null {
  const cells = packCount(view, 'cells');
  const cell = goal === 'landing' ? landingCell(view) : warningCell(view);
  const left = goal === 'landing' ? leftAtLanding(view) : leftAtWarning(view);
  if (cells === null || cell === null || left === null) return null;
  return (carried) => ({ charge: left(carried), voltage: cells * cell });
}

type ChargeLeft = (carried: Carried) => number;

function leftAtLanding(view: CraftView): ChargeLeft | null {
  const reserve = view.quantity('power.charge-reserve');
  return reserve === null ? null : () => reserve;
}

/** Counted from the full pack; a count that goes on beyond what the pack gives warns of nothing. */
function leftAtWarning(view: CraftView): ChargeLeft | null {
  const used = view.quantity('power.used-warning');
  const printed = packQuantity(view, 'capacity');
  if (used === null || printed === null) return null;
  return ({ charge, pack }) => Math.max(0, pack.full - (used * printed) / charge);
}

/** By the mean current: what is stepped through comes to no shorter formula. */
export function dischargeText(
  view: CraftView,
  carried: Carried,
  { from, to, seconds }: Discharge,
  goal: FlightGoal,
): string {
  const mean = ((from - to) * carried.charge) / seconds;
  const end = flightEnds(view, goal)?.(carried);
  return `(${fine(from, '%')} - ${fine(to, '%')}) × ${fine(carried.charge, 'mAh')} / ${fine(mean, 'A')}, the mean current from full to ${endText(view, to > (end?.charge ?? 0), goal)}`;
}

function endText(view: CraftView, isByVoltage: boolean, goal: FlightGoal): string {
  if (isByVoltage) return flightGoals[goal].ends;
  return goal === 'landing'
    ? `the reserve of ${view.shown('power.charge-reserve')}`
    : 'the warning by charge';
}
