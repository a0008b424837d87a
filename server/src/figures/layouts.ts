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

/** Of a ring: how many arms, and how far the first of them is turned from the nose, in degrees. */
const rings: ReadonlyMap<string, readonly [arms: number, first: number]> = new Map([
  ['quad-x', [4, 45]],
  ['quad-plus', [4, 0]],
  ['hex-x', [6, 30]],
  ['octo-x', [8, 22.5]],
  ['y6', [3, 60]],
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
  if (layout === 'y6') return spacing;
  const ring = rings.get(layout);
  if (ring !== undefined) return spacing * Math.sin(Math.PI / ring[0]);
  if (layout !== 'quad-wide' || widthToLength === null || widthToLength <= 0) return null;
  const length = spacing / Math.hypot(1, widthToLength);
  return Math.min(length, widthToLength * length);
}

/** Where a motor sits from the middle of the craft, m: ahead and to the right. */
export interface MotorArm {
  readonly ahead: number;
  readonly aside: number;
}

/**
 * The arms' ends of a layout, from the spacing of opposite motors (m); `y6`: from arm to arm, each counted once for
 * two motors. Null for a layout that is not known.
 */
export function motorArms(
  layout: string,
  spacing: number,
  widthToLength: number | null,
): readonly MotorArm[] | null {
  if (layout === 'quad-wide') {
    if (widthToLength === null || widthToLength <= 0) return null;
    const ahead = spacing / 2 / Math.hypot(1, widthToLength);
    const aside = widthToLength * ahead;
    return [1, -1].flatMap((fore) => [1, -1].map((right) => ({ ahead: fore * ahead, aside: right * aside })));
  }
  const ring = rings.get(layout);
  if (ring === undefined) return null;
  const [arms, first] = ring;
  const reach = layout === 'y6' ? spacing / Math.sqrt(3) : spacing / 2;
  return Array.from({ length: arms }, (_, arm) => {
    const turn = ((first + (360 * arm) / arms) * Math.PI) / 180;
    return { ahead: reach * Math.cos(turn), aside: reach * Math.sin(turn) };
  });
}

/** Whether two propellers share an arm, one in the wash of the other. */
export function isCoaxial(layout: string): boolean {
  return layout === 'y6';
}

/** The places of a layout's motors; undefined for a layout that is not known. */
export function motorPlaces(layout: string): readonly string[] | undefined {
  return places.get(layout);
}
