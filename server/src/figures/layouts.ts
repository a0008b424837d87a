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

/** The places of a layout's motors; undefined for a layout that is not known. */
export function motorPlaces(layout: string): readonly string[] | undefined {
  return places.get(layout);
}
