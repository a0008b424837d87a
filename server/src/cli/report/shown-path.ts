import { relative, resolve } from 'node:path';

/** A path for people and programs, relative where that is shorter. A file named - is no standard input. */
export function shownPath(file: string): string {
  const near = relative('', resolve(file));
  if (near === '-') return `./${near}`;
  return near === '' || near.startsWith('..') ? file : near;
}
