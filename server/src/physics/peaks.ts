/** A place that is higher than what lies on both sides; of a flat top its middle, rounded down. */
export interface Summit {
  readonly at: number;
  /** The ends of a flat top. */
  readonly from: number;
  readonly to: number;
}

/** All summits, none at an end. By definition; the rounding is that of SciPy’s `find_peaks`. */
export function summitsOf(values: ArrayLike<number>): readonly Summit[] {
  const found: Summit[] = [];
  for (let from = 1; from < values.length - 1; from += 1) {
    const height = values[from] ?? 0;
    if (!((values[from - 1] ?? 0) < height)) continue;
    let to = from;
    while (to + 1 < values.length && values[to + 1] === height) to += 1;
    if (to + 1 < values.length && (values[to + 1] ?? 0) < height)
      found.push({ at: (from + to) >> 1, from, to });
    from = to;
  }
  return found;
}

export interface Prominence {
  readonly prominence: number;
  /** The lowest place on each side before something higher. */
  readonly left: number;
  readonly right: number;
}

/**
 * How far one has to come down from a place on the way to anything higher: its height over the higher of the two
 * lowest places between it and the next higher ones, or the ends.
 * Source: topographic prominence, as SciPy’s `peak_prominences` defines it.
 */
export function prominenceAt(values: ArrayLike<number>, at: number): Prominence {
  const height = values[at] ?? 0;
  const lowest = (by: -1 | 1) => {
    let place = at;
    for (let next = at + by; next >= 0 && next < values.length && (values[next] ?? 0) <= height; next += by)
      if ((values[next] ?? 0) < (values[place] ?? 0)) place = next;
    return place;
  };
  const [left, right] = [lowest(-1), lowest(1)];
  return { prominence: height - Math.max(values[left] ?? 0, values[right] ?? 0), left, right };
}

/**
 * Where a summit comes down by a share of its prominence on each side, between places by a straight line.
 * Source: as SciPy’s `peak_widths` defines it.
 */
export function widthAt(
  values: ArrayLike<number>,
  at: number,
  share: number,
): { readonly from: number; readonly to: number } {
  const { prominence, left, right } = prominenceAt(values, at);
  const level = (values[at] ?? 0) - share * prominence;
  const crossing = (by: -1 | 1, end: number) => {
    let place = at;
    while (place !== end && (values[place] ?? 0) > level) place += by;
    const [here, before] = [values[place] ?? 0, values[place - by] ?? 0];
    return here < level ? place - (by * (level - here)) / (before - here) : place;
  };
  return { from: crossing(-1, left), to: crossing(1, right) };
}

/** Summits of which none lies nearer to a higher one than a distance: the highest are kept first. */
export function summitsApart(
  values: ArrayLike<number>,
  summits: readonly Summit[],
  distance: number,
): readonly Summit[] {
  const rising = [...summits].sort((one, other) => (values[one.at] ?? 0) - (values[other.at] ?? 0));
  const kept: Summit[] = [];
  for (const one of rising.reverse())
    if (kept.every(({ at }) => Math.abs(at - one.at) >= Math.ceil(distance))) kept.push(one);
  return kept.sort((one, other) => one.at - other.at);
}
