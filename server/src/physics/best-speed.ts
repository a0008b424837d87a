/** (√5 − 1) / 2: each look leaves this share of the stretch. */
const golden = (Math.sqrt(5) - 1) / 2;

/**
 * Where something that falls and then rises is least, between two ends, to a share of the stretch. `measure` may be
 * infinite at the upper end. Source: golden section search, J. Kiefer, Proc. Amer. Math. Soc. 4 (1953).
 */
export function leastAt(measure: (at: number) => number, from: number, end: number, within = 1e-5): number {
  let [low, high] = [from, end];
  let [left, right] = [high - golden * (high - low), low + golden * (high - low)];
  let [below, above] = [measure(left), measure(right)];
  while (high - low > within * (end - from)) {
    if (below <= above) {
      [high, right, above] = [right, left, below];
      left = high - golden * (high - low);
      below = measure(left);
    } else {
      [low, left, below] = [left, right, above];
      right = low + golden * (high - low);
      above = measure(right);
    }
  }
  return (low + high) / 2;
}

/** Airspeed (m/s) between 0 and a highest one at which a power (W) along the airspeed is least; 0: hovering. */
export function enduranceSpeed(power: (speed: number) => number, highest: number): number {
  const speed = leastAt(power, 0, highest);
  return power(0) <= power(speed) ? 0 : speed;
}

/**
 * Airspeed (m/s) up to a highest one at which a metre over the ground takes least, against a wind (m/s; below 0: with
 * it), and how much it takes there (J/m); null where no airspeed makes way.
 */
export function rangeSpeed(
  power: (speed: number) => number,
  highest: number,
  wind = 0,
): { readonly speed: number; readonly perMetre: number } | null {
  if (highest <= wind) return null;
  const perMetre = (speed: number) => power(speed) / (speed - wind);
  const speed = leastAt(perMetre, Math.max(0, wind), highest);
  const least = perMetre(speed);
  return Number.isFinite(least) ? { speed, perMetre: least } : null;
}

/** The highest speed (m/s) up to a limit at which something still holds that holds at 0: to a millimetre a second. */
export function highestSpeed(holds: (speed: number) => boolean, limit: number): number {
  if (holds(limit)) return limit;
  let [low, high] = [0, limit];
  while (high - low > 1e-3) {
    const middle = (low + high) / 2;
    if (holds(middle)) low = middle;
    else high = middle;
  }
  return low;
}

/**
 * How far out and back (m) with what takes it so far the one way (m) and so far the other, each by itself: the parts of
 * the charge that the two ways use add up to all of it, R / out + R / back = 1.
 */
export function reachOutAndBack(out: number, back: number): number {
  return out > 0 && back > 0 ? 1 / (1 / out + 1 / back) : 0;
}
