import { airDensity, soundSpeed, standardPressure } from '../physics/atmosphere';
import type { FigureSource } from './figure';
import { model } from './model';

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
      const why = `standard pressure at ${view.shown('craft.field-elevation')}, at ${view.shown('craft.air-temperature')}: p / (R T)`;
      return { likely: air.value.density, why };
    },
  },
];
