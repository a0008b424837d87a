/**
 * Forward flight written a second time, plainly and slowly: by bisection and by looking everywhere. Shares nothing
 * with what it is held against.
 */
export interface PlainCraft {
  /** N, m², kg/m³, N s/m, m² */
  readonly weight: number;
  readonly discs: number;
  readonly density: number;
  readonly linear: number;
  readonly area: number;
}

/** Where a rising function passes through 0. */
function crossing(rising: (at: number) => number, low: number, high: number): number {
  let [below, above] = [low, high];
  for (let step = 0; step < 200; step += 1) {
    const middle = (below + above) / 2;
    if (rising(middle) < 0) below = middle;
    else above = middle;
  }
  return (below + above) / 2;
}

/** vi = vh² / √((V cos α)² + (V sin α + vi)²), m/s. */
export function plainInduced(thrust: number, craft: PlainCraft, speed: number, tilt: number): number {
  const square = thrust / (2 * craft.density * craft.discs);
  return crossing(
    (vi) => vi * Math.sqrt((speed * Math.cos(tilt)) ** 2 + (speed * Math.sin(tilt) + vi) ** 2) - square,
    0,
    10 * Math.sqrt(square),
  );
}

/** Power through the air in level flight, T (vi + V sin θ), with T and θ from the forces, W. */
export function plainPower(craft: PlainCraft, speed: number): number {
  const drag = craft.linear * speed + 0.5 * craft.density * craft.area * speed * speed;
  const tilt = Math.atan(drag / craft.weight);
  const thrust = craft.weight / Math.cos(tilt);
  return thrust * (plainInduced(thrust, craft, speed, tilt) + speed * Math.sin(tilt));
}

/** Where something is least, to a hundredth, by looking at every hundredth. */
export function plainLeast(measure: (at: number) => number, from: number, end: number): number {
  let [best, least] = [from, Number.POSITIVE_INFINITY];
  for (let step = 0; step <= Math.ceil((end - from) / 0.01); step += 1) {
    const at = Math.min(end, from + 0.01 * step);
    const value = measure(at);
    if (value < least) [best, least] = [at, value];
  }
  return best;
}
