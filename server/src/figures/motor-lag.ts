import { rodInertia } from '../physics/inertia';
import { responseTime } from '../physics/motor';
import { torqueFactor } from '../physics/propeller';
import { carriedBy } from './drive';
import { hovering } from './drive-figures';
import type { FigureSource } from './figure';
import { model } from './model';

/** Time constant with which thrust follows a command in the hover, s; and how far it may be off. */
export interface MotorLag {
  readonly likely: number;
  readonly low: number;
  readonly high: number;
  readonly why: string;
}

/** Grams of a plastic propeller a square inch of its diameter squared. Common practice, from kitchen scales. */
const massPerSquareInch = 0.16e-3;
const inch = 0.0254;
/** Blades are heavier at the root: this much of a rod of their mass and length. From memory. */
const rodShare = 0.6;
/** The motor's bell beside the propeller. From memory. */
const bellShare = 1.3;

export const motorLagOf = model<[], MotorLag>('motor lag', (own) => {
  const given = own.quantity('motor.response-time');
  if (given === null) return estimatedMotorLag(own);
  const why = 'motor.response-time, as the script sets it';
  return { value: { likely: given, low: 0.8 * given, high: 1.2 * given, why } };
});

/** What follows from motor and propeller, whatever the script sets. */
export const estimatedMotorLag = model<[], MotorLag>('estimated motor lag', (own) => {
  const carried = carriedBy(own);
  const state = carried === null ? null : hovering(carried.value.likely);
  if (carried === null || state === null) return null;
  const { drive } = carried.value.likely;
  const { diameter } = drive.propeller;
  const inertia = own.quantity('prop.inertia');
  const usual = bellShare * rodShare * rodInertia(massPerSquareInch * (diameter / inch) ** 2, diameter);
  const factor = torqueFactor(drive.propeller, drive.airDensity);
  const likely = responseTime(drive.motor, state.motor.speed, factor, inertia ?? usual);
  const assumed = inertia === null ? ['the inertia of a usual plastic propeller of this diameter'] : [];
  const why = `J / (1/(K^2 R) + 2 c Ω), J = ${own.short(inertia ?? usual, 'g*m^2')}`;
  // Controllers add a lag of their own, and a braking motor is slower than a driven one.
  const spread = inertia === null ? 2.5 : 1.6;
  return {
    value: { likely, low: likely / spread, high: likely * spread, why },
    assumed: [...carried.assumed, ...assumed],
  };
});

export const motorLagFigures: readonly FigureSource[] = [
  {
    id: 'motor-lag',
    title: 'Lag of motor and propeller in the hover',
    unit: 'ms',
    from: ['motor.response-time', 'prop.inertia', 'motor.resistance'],
    compute(view) {
      const lag = motorLagOf(view);
      if (lag === null) return null;
      const { likely, low, high, why } = lag.value;
      return { likely: 1e3 * likely, low: 1e3 * low, high: 1e3 * high, why, assumed: lag.assumed };
    },
  },
];
