import type { CraftView } from '../craft/view';
import { airDensity, gasConstant, soundSpeed, standardPressure } from '../physics/atmosphere';
import type { FigureSource } from './figure';
import { model } from './model';
import { fine } from './why';

/** The air that the craft flies in. */
export interface Air {
  /** kg/m³ */
  readonly density: number;
  /** m/s */
  readonly sound: number;
}

export const airOf = model<[], Air>('air', (own) => {
  const elevation = own.quantity('craft.field-elevation');
  const temperature = own.quantity('craft.air-temperature');
  if (elevation === null || temperature === null) return null;
  const density = airDensity(standardPressure(elevation), temperature);
  return { value: { density, sound: soundSpeed(temperature) } };
});

export const airFigures: readonly FigureSource[] = [
  {
    id: 'air-density',
    title: 'Density of the air',
    unit: 'kg/m^3',
    from: ['craft.field-elevation', 'craft.air-temperature'],
    compute(view) {
      const air = airOf(view);
      if (air === null) return null;
      const why = whyDense(view);
      return { likely: air.value.density, why };
    },
  },
];

/** The ideal gas with its numbers, and where they come from. */
function whyDense(view: CraftView): string {
  const height = view.quantity('craft.field-elevation') ?? 0;
  const temperature = view.quantity('craft.air-temperature') ?? 0;
  const pressure = fine(standardPressure(height), 'Pa');
  return `${pressure} / (${fine(gasConstant, '')} J/(kg*K) × ${fine(temperature, 'K')}), standard pressure at ${view.shown('craft.field-elevation')}`;
}
