/** A point of a curve. */
export interface Point {
  readonly x: number;
  readonly y: number;
}

/** A smooth curve through points that never overshoots between two of them. */
export interface MonotoneCurve {
  readonly points: readonly Point[];
  /** The slope at each point. */
  readonly slopes: readonly number[];
}

/**
 * The monotone cubic through points with rising x, at least two: slopes are the mean of the neighbouring
 * secants (the secant itself at the ends), nothing where the curve is level or turns, and drawn in where they
 * would make it overshoot (α² + β² ≤ 9). Throws when x does not rise.
 * Source: F. N. Fritsch and R. E. Carlson, Monotone Piecewise Cubic Interpolation, SIAM Journal on Numerical
 * Analysis 17 (1980), pages 238 to 246.
 */
export function monotoneCurve(points: readonly Point[]): MonotoneCurve {
  const secants = points.slice(1).map((point, index) => secant(points[index] ?? point, point));
  const slopes = points.map((_, index) => {
    const before = secants[index - 1] ?? secants[index] ?? 0;
    const after = secants[index] ?? before;
    return before * after <= 0 ? 0 : (before + after) / 2;
  });
  for (const [index, rise] of secants.entries()) drawIn(slopes, index, rise);
  return { points, slopes };
}

function secant(from: Point, to: Point): number {
  if (!(to.x > from.x)) throw new RangeError(`${to.x} does not lie beyond ${from.x}`);
  return (to.y - from.y) / (to.x - from.x);
}

/** Draws the slopes at both ends of a stretch in, so that the curve does not leave it. */
function drawIn(slopes: number[], index: number, rise: number): void {
  if (rise === 0) {
    slopes[index] = 0;
    slopes[index + 1] = 0;
    return;
  }
  const alpha = (slopes[index] ?? 0) / rise;
  const beta = (slopes[index + 1] ?? 0) / rise;
  const length = Math.hypot(alpha, beta);
  if (length <= 3) return;
  slopes[index] = (3 / length) * alpha * rise;
  slopes[index + 1] = (3 / length) * beta * rise;
}

/** The height of the curve at x; level beyond its ends. */
export function curveValue(curve: MonotoneCurve, x: number): number {
  const stretch = stretchAt(curve, x);
  if (stretch === null) return endValue(curve, x);
  const { from, to, t, width, first, last } = stretch;
  return (
    from.y * (1 + 2 * t) * (1 - t) ** 2 +
    first * width * t * (1 - t) ** 2 +
    to.y * t * t * (3 - 2 * t) +
    last * width * t * t * (t - 1)
  );
}

/** The slope of the curve at x, in y a unit of x; nothing beyond its ends. */
export function curveSlope(curve: MonotoneCurve, x: number): number {
  const stretch = stretchAt(curve, x);
  if (stretch === null) return 0;
  const { from, to, t, width, first, last } = stretch;
  return (
    (6 * t * (1 - t) * (to.y - from.y)) / width + first * (1 - 4 * t + 3 * t * t) + last * (3 * t * t - 2 * t)
  );
}

interface CurveStretch {
  readonly from: Point;
  readonly to: Point;
  /** Where x lies in it, from 0 to 1. */
  readonly t: number;
  readonly width: number;
  readonly first: number;
  readonly last: number;
}

function stretchAt({ points, slopes }: MonotoneCurve, x: number): CurveStretch | null {
  const next = points.findIndex((point, index) => index > 0 && x <= point.x);
  const from = points[next - 1];
  const to = points[next];
  if (from === undefined || to === undefined || x < from.x) return null;
  const width = to.x - from.x;
  const [first = 0, last = 0] = [slopes[next - 1], slopes[next]];
  return { from, to, t: (x - from.x) / width, width, first, last };
}

function endValue({ points }: MonotoneCurve, x: number): number {
  const [first] = points;
  const end = first !== undefined && x < first.x ? first : points.at(-1);
  return end?.y ?? 0;
}
