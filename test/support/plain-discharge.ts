/** A pack and a load as the worked cases have them: a table in tenths of the charge, volts of one cell. */
export interface PlainPack {
  readonly cells: number;
  readonly table: readonly number[];
  /** ohm */
  readonly resistance: number;
  /** Ah */
  readonly capacity: number;
}

export interface PlainFlight {
  readonly seconds: number;
  /** Ah */
  readonly used: number;
  /** Wh */
  readonly energy: number;
  /** A, at the start and at the end. */
  readonly current: readonly [start: number, end: number];
  /** Share of the charge that is left. */
  readonly left: number;
}

/**
 * The plain, slow way, to hold the engine's against: the clock is stepped, and at each step the voltage under the load
 * is looked for by halving, until it is down to the lowest that is allowed or the pack can't bear the load.
 */
export function flownByTheClock(
  { cells, table, resistance, capacity }: PlainPack,
  { power, current = 0 }: { readonly power: number; readonly current?: number },
  { lowest, leftAtLeast = 0, step = 0.05 }: { lowest: number; leftAtLeast?: number; step?: number },
): PlainFlight {
  let [seconds, used, energy, left] = [0, 0, 0, 1];
  let [first, last] = [Number.NaN, Number.NaN];
  while (left > leftAtLeast) {
    const place = left * (table.length - 1);
    const below = Math.min(table.length - 2, Math.floor(place));
    const [low = 0, high = 0] = [table[below], table[below + 1]];
    const open = cells * (low + (place - below) * (high - low));
    const drawn = bornBy(open, resistance, power, current);
    if (drawn === null || drawn.voltage < lowest) break;
    if (Number.isNaN(first)) first = drawn.current;
    last = drawn.current;
    used += (drawn.current * step) / 3600;
    energy += (drawn.voltage * drawn.current * step) / 3600;
    left -= (drawn.current * step) / 3600 / capacity;
    seconds += step;
  }
  return { seconds, used, energy, current: [first, last], left };
}

/** The highest voltage at which what the pack gives is what is drawn; null where it never is. */
function bornBy(open: number, resistance: number, power: number, current: number) {
  // More is to spare the further the voltage falls, down to half of that at rest, and no further.
  const spare = (voltage: number) => (open - voltage) / resistance - power / voltage - current;
  let [low, high] = [Math.max(1e-9, (open - resistance * current) / 2), open];
  if (spare(low) < 0) return null;
  for (let look = 0; look < 60; look += 1) {
    const middle = (low + high) / 2;
    if (spare(middle) >= 0) low = middle;
    else high = middle;
  }
  return { voltage: low, current: (open - low) / resistance };
}
