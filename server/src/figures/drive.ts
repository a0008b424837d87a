import type { CraftView } from '../craft/view';
import { needsForThrust } from '../physics/drive';
import { beliefAbout } from './beliefs';
import { type Carried, flightResistance, withDrive } from './carried';
import { model } from './model';
import { fullVoltage, landingCell, packCount } from './pack-in-view';
import type { PackWarmth } from './pack-source';
import { priorDrive } from './prior-drive';
import { changedIn, type Doubtful, doubtful } from './uncertain';

/** With a pack that is half used, as flights have shown it. */
export const carriedBy = model<[], Doubtful<Carried>>('drive', (own) => flown(own, 'as it is'));

/** With a pack as cold as one may take off. */
export const carriedCold = model<[], Doubtful<Carried>>('drive with a cold pack', (own) =>
  flown(own, 'cold'),
);

function flown(own: CraftView, warmth: PackWarmth) {
  const prior = priorDrive(own, warmth);
  if (prior === null) return null;
  const { carried, doubts } = prior.value;
  const { belief, flights } = beliefAbout(own, doubts);
  return {
    value: doubtful(carried, doubts, belief),
    assumed: [...prior.assumed, ...(flights.length === 0 ? [] : [`corrected by ${flightsText(flights)}`])],
  };
}

function flightsText(flights: readonly string[]): string {
  return flights.length === 1
    ? `what flight ${flights[0]} measured`
    : `what ${flights.length} flights measured`;
}

/** With a pack fresh from the charger: limits are met with it first. */
export const carriedOnFull = model<[], Doubtful<Carried>>('drive with a full pack', (own) => {
  const carried = carriedBy(own);
  const voltage = fullVoltage(own);
  if (carried === null || voltage === null) return null;
  return { ...carried, value: changedIn(carried.value, (one) => withVoltage(one, voltage)) };
});

/** With a pack that shows the landing voltage in the hover: what is left to stop a descent with. */
export const carriedToLand = model<[], Doubtful<Carried>>('drive with a pack due to land', (own) => {
  const carried = carriedBy(own);
  const cells = packCount(own, 'cells');
  const cell = landingCell(own);
  if (carried === null || cells === null || cell === null) return null;
  return {
    value: changedIn(carried.value, (one) =>
      dueToLand(one, cells * cell, fullVoltage(own) ?? Number.POSITIVE_INFINITY),
    ),
    assumed: [
      ...carried.assumed,
      ...(own.isSet('power.land-cell') ? [] : [`landing at ${own.short(cell, 'V')} a cell`]),
    ],
  };
});

function withVoltage(carried: Carried, openVoltage: number): Carried {
  return withDrive(carried, { openVoltage });
}

/** So much above the landing voltage as the hover's current takes off, and never above the most that a full one has. */
function dueToLand(carried: Carried, voltage: number, most: number): Carried {
  const { load } = needsForThrust(carried.drive, carried.weight);
  const sag = flightResistance(carried) * (load.power / voltage + load.current);
  return withVoltage(carried, Math.min(most, voltage + sag));
}
