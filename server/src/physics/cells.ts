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

/** Volts that a pack loses inside itself: current (A) × resistance (ohm). */
export function sag(current: number, resistance: number): number {
  return current * resistance;
}

/**
 * The counts of cells in series that a resting voltage can belong to: every whole number of cells that would
 * each lie between `lowest` and `highest`. All in volts.
 */
export function plausibleCells(voltage: number, lowest: number, highest: number): readonly number[] {
  const slack = 1e-9;
  const least = Math.max(1, Math.ceil(voltage / highest - slack));
  const most = Math.floor(voltage / lowest + slack);
  return Array.from({ length: Math.max(0, most - least + 1) }, (_, index) => least + index);
}
