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

/** What a rested cell shows (V) with a share of its charge (0 to 1). */
export interface RestPoint {
  readonly charge: number;
  readonly voltage: number;
}

/**
 * Share of its charge that a cell holds whose voltage at rest is known: on straight lines between the points
 * of its open-circuit table, which rise. 0 below the first and 1 above the last point.
 */
export function chargeAtRest(points: readonly RestPoint[], voltage: number): number {
  const above = points.findIndex((point) => point.voltage >= voltage);
  if (above < 0) return 1;
  const [low, high] = [points[above - 1], points[above]];
  if (low === undefined || high === undefined) return 0;
  const part = (voltage - low.voltage) / (high.voltage - low.voltage);
  return low.charge + part * (high.charge - low.charge);
}

/** What a cell with a share of its charge shows at rest, V: the same lines read the other way, level beyond both ends. */
export function restVoltage(points: readonly RestPoint[], charge: number): number {
  const above = points.findIndex((point) => point.charge >= charge);
  const [low, high] = [points[above - 1], points[above]];
  if (high === undefined) return points.at(-1)?.voltage ?? Number.NaN;
  if (low === undefined) return high.voltage;
  const part = (charge - low.charge) / (high.charge - low.charge);
  return low.voltage + part * (high.voltage - low.voltage);
}
