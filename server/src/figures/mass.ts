import type { CraftView } from '../craft/view';
import type { Computed, FigureSource } from './figure';
import { packPath, packQuantity } from './pack-in-view';

export const massFigures: readonly FigureSource[] = [
  {
    id: 'flying-mass',
    title: 'Mass in flight',
    unit: 'g',
    from: ['craft.mass', 'pack.<name>.mass', 'craft.payload'],
    compute: flyingMass,
  },
];

function flyingMass(view: CraftView): Computed | null {
  const craft = view.quantity('craft.mass');
  const pack = packQuantity(view, 'mass');
  const payload = view.quantity('craft.payload');
  const path = packPath(view, 'mass');
  if (craft === null || pack === null || payload === null || path === null) return null;
  const parts = ['craft.mass', path, 'craft.payload'].map((one) => view.shown(one));
  return { likely: (craft + pack + payload) * 1000, why: parts.join(' + ') };
}
