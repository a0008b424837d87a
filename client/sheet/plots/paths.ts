/** Path data of SVG (W3C, SVG 2, 9.3), in pixels. Where there is nothing to draw, a point is null and the path breaks. */

type Point = readonly [x: number, y: number];

/** Straight lines from point to point; a point alone is one that a round end of a stroke shows. */
export function pathThrough(points: readonly (Point | null)[]): string {
  return runsOf(points)
    .map((run) => `${through(run)}${run.length === 1 ? 'Z' : ''}`)
    .join('');
}

/** What lies between two curves. */
export function areaBetween(
  points: readonly (readonly [x: number, low: number, high: number] | null)[],
): string {
  return runsOf(points)
    .map((run) => {
      const above = run.map(([x, , high]): Point => [x, high]);
      const below = run.map(([x, low]): Point => [x, low]);
      return `${through([...above, ...below.reverse()])}Z`;
    })
    .join('');
}

function through(points: readonly Point[]): string {
  return `M${points.map((point) => point.map(short).join()).join('L')}`;
}

/** A thousandth of a pixel is never seen. */
function short(pixels: number): number {
  return Math.round(pixels * 1000) / 1000;
}

function runsOf<T>(points: readonly (T | null)[]): readonly (readonly T[])[] {
  const runs: T[][] = [];
  let isBroken = true;
  for (const point of points) {
    if (point !== null && isBroken) runs.push([]);
    if (point !== null) runs.at(-1)?.push(point);
    isBroken = point === null;
  }
  return runs;
}
