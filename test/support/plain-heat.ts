// A second reckoning of a motor's heat, as plain and slow as may be: nothing of `server/src` is imported, so that an
// error there can not hide here. Small steps forward in time, by the classic method of Runge and Kutta.

export interface PlainHeat {
  /** J/K */
  readonly winding: number;
  readonly housing: number;
  /** K/W */
  readonly within: number;
  readonly toAir: number;
  /** Watts of the winding at a temperature, and of the housing. */
  readonly loss: (winding: number) => number;
  readonly housingLoss: number;
  readonly air: number;
}

type Pair = readonly [winding: number, housing: number];

function slopes(heat: PlainHeat, [w, h]: Pair): Pair {
  const inward = (w - h) / heat.within;
  const outward = (h - heat.air) / heat.toAir;
  return [(heat.loss(w) - inward) / heat.winding, (heat.housingLoss + inward - outward) / heat.housing];
}

function moved([w, h]: Pair, [dw, dh]: Pair, by: number): Pair {
  return [w + by * dw, h + by * dh];
}

/** Winding and housing after a time, from a start, in so many steps. */
export function plainHeatAfter(heat: PlainHeat, start: Pair, seconds: number, steps: number): Pair {
  const step = seconds / steps;
  let at = start;
  for (let count = 0; count < steps; count += 1) {
    const a = slopes(heat, at);
    const b = slopes(heat, moved(at, a, step / 2));
    const c = slopes(heat, moved(at, b, step / 2));
    const d = slopes(heat, moved(at, c, step));
    at = [0, 1].map(
      (which) =>
        (at[which] ?? 0) +
        (step / 6) * ((a[which] ?? 0) + 2 * (b[which] ?? 0) + 2 * (c[which] ?? 0) + (d[which] ?? 0)),
    ) as unknown as Pair;
  }
  return at;
}
