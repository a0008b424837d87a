/** Where the motors of each layout sit. */
const places: ReadonlyMap<string, readonly string[]> = new Map([
  ['quad-x', ['front-left', 'front-right', 'rear-left', 'rear-right']],
  ['quad-wide', ['front-left', 'front-right', 'rear-left', 'rear-right']],
  ['quad-plus', ['front', 'left', 'right', 'rear']],
  ['hex-x', ['front-left', 'front-right', 'left', 'right', 'rear-left', 'rear-right']],
  [
    'octo-x',
    [
      'front-left',
      'front-right',
      'left-front',
      'right-front',
      'left-rear',
      'right-rear',
      'rear-left',
      'rear-right',
    ],
  ],
  [
    'y6',
    [
      'front-left-upper',
      'front-left-lower',
      'front-right-upper',
      'front-right-lower',
      'rear-upper',
      'rear-lower',
    ],
  ],
]);

/**
 * Metres between the shafts of motors that sit next to each other, from the spacing of opposite ones (m). Regular
 * polygons: the side is the diagonal times sin(π / corners). `quad-wide`: the shorter side of the rectangle whose
 * width over length is given. `y6`: the arms' ends are the spacing apart. Null for a layout that is not known.
 */
export function neighbourDistance(
  layout: string,
  spacing: number,
  widthToLength: number | null,
): number | null {
  const corners = new Map([
    ['quad-x', 4],
    ['quad-plus', 4],
    ['hex-x', 6],
    ['octo-x', 8],
  ]).get(layout);
  if (corners !== undefined) return spacing * Math.sin(Math.PI / corners);
  if (layout === 'y6') return spacing;
  if (layout !== 'quad-wide' || widthToLength === null || widthToLength <= 0) return null;
  const length = spacing / Math.hypot(1, widthToLength);
  return Math.min(length, widthToLength * length);
}

/** The places of a layout's motors; undefined for a layout that is not known. */
export function motorPlaces(layout: string): readonly string[] | undefined {
  return places.get(layout);
}
