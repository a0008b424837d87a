import { inBase } from '../catalog/known-parameter';
import type { Chemistry } from '../catalog/model/hardware';
import type { CraftView } from '../craft/view';

/** The path of a property of the pack in view: `cells` is `pack.sprint.cells`. Null without a pack. */
export function packPath(view: CraftView, property: string): string | null {
  return view.pack === null ? null : `pack.${view.pack}.${property}`;
}

export function packQuantity(view: CraftView, property: string): number | null {
  const path = packPath(view, property);
  return path === null ? null : view.quantity(path);
}

export function packCount(view: CraftView, property: string): number | null {
  const path = packPath(view, property);
  return path === null ? null : view.count(path);
}

export function chemistryInView(view: CraftView): Chemistry | undefined {
  const path = packPath(view, 'chemistry');
  const word = path === null ? null : view.word(path);
  return word === null ? undefined : view.catalog.chemistry(word);
}

/** Volts at which a cell of the pack in view leaves the charger. */
export function fullCell(view: CraftView): number | null {
  const path = packPath(view, 'full-cell');
  if (path !== null && view.isSet(path)) return view.quantity(path);
  const chemistry = chemistryInView(view);
  return chemistry === undefined ? null : inBase(chemistry.full);
}

export function nominalCell(view: CraftView): number | null {
  const chemistry = chemistryInView(view);
  return chemistry === undefined ? null : inBase(chemistry.nominal);
}
