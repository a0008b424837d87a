import type { Catalog } from '../catalog/catalog';
import { takes } from '../catalog/path-tree';
import { isOwnPath } from '../language/path-text';

/** A member of a collection that a path names: `sprint` of `pack`. */
export interface Membership {
  readonly collection: string;
  readonly member: string;
}

/** No collection opens deeper; a path of thousands of words must not be gone through once for each. */
const mostWords = 8;

/** The collections' members that a path goes through: `pack.sprint.cells` names the pack `sprint`. Only such as there are. */
export function membershipsIn(path: string, catalog: Catalog): readonly Membership[] {
  if (isOwnPath(path)) return [];
  const found: Membership[] = [];
  let words = 0;
  for (let dot = path.indexOf('.'); dot >= 0 && words < mostWords; dot = path.indexOf('.', dot + 1)) {
    words += 1;
    const collection = path.slice(0, dot);
    const known = catalog.collection(collection);
    if (known === undefined) continue;
    const next = path.indexOf('.', dot + 1);
    const member = path.slice(dot + 1, next < 0 ? undefined : next);
    if (takes(known, member)) found.push({ collection, member });
  }
  return found;
}
