/** What a board prints that knows no comments. */
export const plover = [
  'arm low ....... 1700   (1000 to 2200)',
  'arm high ...... 2050   (1000 to 2200)',
  'arm stick ..... 5',
  'tilt limit .... 180    (10 to 180)',
  '',
].join('\n');
