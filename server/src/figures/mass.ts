import type { CraftView } from '../craft/view';
import type { Computed, FigureSource } from './figure';
import { packPath, packQuantity } from './pack-in-view';
import { inProportion, withinFactor } from './uncertain';

export const massFigures: readonly FigureSource[] = [
  {
    id: 'flying-mass',
    title: 'Mass in flight',
    unit: 'g',
    from: ['craft.mass', 'pack.<name>.mass', 'craft.payload'],
    compute: flyingMassFigure,
  },
];

/** Kitchen scales, and what is strapped on at the field. Common practice. */
export const massFactor = 1.02;

/** With the pack in view and all that it carries, kg. */
export function flyingMass(view: CraftView): number | null {
  const craft = view.quantity('craft.mass');
  const pack = packQuantity(view, 'mass');
  const payload = view.quantity('craft.payload');
  return craft === null || pack === null || payload === null ? null : craft + pack + payload;
}

function flyingMassFigure(view: CraftView): Computed | null {
  const mass = flyingMass(view);
  const path = packPath(view, 'mass');
  if (mass === null || path === null) return null;
  const parts = ['craft.mass', path, 'craft.payload'].map((one) => view.shown(one));
  return { ...inProportion(withinFactor(mass, massFactor), 1000), why: parts.join(' + ') };
}
