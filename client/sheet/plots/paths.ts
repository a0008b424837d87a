import { area, line } from 'd3-shape';

type PixelPoint = readonly [x: number, y: number];
type Between = readonly [x: number, low: number, high: number];

/** Straight lines from point to point, in pixels; where there is nothing to draw, a point is null and the path breaks. */
export function pathThrough(points: readonly (PixelPoint | null)[]): string {
  const path = line<PixelPoint | null>()
    .defined((point) => point !== null)
    .x((point) => point?.[0] ?? 0)
    .y((point) => point?.[1] ?? 0);
  return path(points) ?? '';
}

/** What lies between two curves. */
export function areaBetween(points: readonly (Between | null)[]): string {
  const path = area<Between | null>()
    .defined((point) => point !== null)
    .x((point) => point?.[0] ?? 0)
    .y0((point) => point?.[1] ?? 0)
    .y1((point) => point?.[2] ?? 0);
  return path(points) ?? '';
}
