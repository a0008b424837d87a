/** Volts of so many cells in series. */
export function seriesVoltage(cells: number, cellVoltage: number): number {
  return cells * cellVoltage;
}

/** Joules in a pack: nominal voltage (V) × charge (C). */
export function packEnergy(nominalVoltage: number, charge: number): number {
  return nominalVoltage * charge;
}

/**
 * Amperes that a discharge rating allows: rating (1/s) × charge (C). A rating of 1 C empties the pack in an
 * hour: 1/3600 a second.
 * Source: definition of the C-rate, e.g. glossary of a cell dealer (akkus-battery.com): 1 C of 1000 mAh is 1 A.
 */
export function ratedCurrent(rating: number, charge: number): number {
  return rating * charge;
}
