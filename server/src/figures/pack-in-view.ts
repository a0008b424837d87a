import { inBase } from '../catalog/known-parameter';
import type { Chemistry } from '../catalog/model/hardware';
import type { CraftView } from '../craft/view';
import { chargeAtRest, type RestPoint } from '../physics/cells';

/** The path of a property of the pack in view: `cells` is `pack.sprint.cells`. Null without a pack. */
export function packPath(view: CraftView, property: string): string | null {
  return view.pack === null ? null : `pack.${view.pack}.${property}`;
}

export function packQuantity(view: CraftView, property: string): number | null {
  const path = packPath(view, property);
  return path === null ? missing(view, property) : view.quantity(path);
}

/** What a line sets, of something that a figure can do without. */
export function packQuantityIfSet(view: CraftView, property: string): number | null {
  const path = packPath(view, property);
  return path === null ? null : view.quantityOr(path, null);
}

export function packCount(view: CraftView, property: string): number | null {
  const path = packPath(view, property);
  return path === null ? missing(view, property) : view.count(path);
}

/** Of a craft without a pack: the first thing that it lacks is one. */
function missing(view: CraftView, property: string): null {
  view.noteMissing(`pack.<name>.${property}`);
  return null;
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

/** What a cell of a chemistry shows at rest, by its charge; null where nobody has measured it. */
export function restPointsOf({ atRest }: Chemistry): readonly RestPoint[] | null {
  return atRest?.map((point) => ({ charge: inBase(point.charge), voltage: inBase(point.voltage) })) ?? null;
}

/** Share of its charge that a cell holds which rests at a voltage; null where nobody has measured its chemistry. */
export function leftAtRest(chemistry: Chemistry, voltage: number): number | null {
  const points = restPointsOf(chemistry);
  return points === null ? null : chargeAtRest(points, voltage);
}

/** What a full pack has without a load, V; null where that is not known. */
export function fullVoltage(view: CraftView): number | null {
  const [cells, cell] = [packCount(view, 'cells'), fullCell(view)];
  return cells === null || cell === null ? null : cells * cell;
}

/** Volts of a cell at which to land: the script's, else what is usual for its chemistry; null where neither is known. */
export function landingCell(view: CraftView): number | null {
  return cellFor(view, 'land');
}

/** The same of the warning. */
export function warningCell(view: CraftView): number | null {
  return cellFor(view, 'warn');
}

function cellFor(view: CraftView, what: 'warn' | 'land'): number | null {
  const given = view.quantityOr(`power.${what}-cell`, null);
  const usual = chemistryInView(view)?.[what];
  const cell = given ?? (usual === undefined ? null : inBase(usual));
  return cell === null || cell <= 0 ? null : cell;
}
