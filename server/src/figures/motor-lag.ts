import { rodInertia } from '../physics/inertia';
import { dampingAt } from './damping';
import { type Carried, carriedBy } from './drive';
import { hovering } from './drive-states';
import type { FigureSource } from './figure';
import { model } from './model';
import { fine } from './why';

/** Time constant with which thrust follows a command in the hover, s; and how far it may be off. */
export interface MotorLag {
  readonly likely: number;
  readonly low: number;
  readonly high: number;
  readonly why: string;
}

/** What turns with a motor's shaft: it lags behind the command, and its reaction turns the craft. */
export interface Rotor {
  /** Of bell and propeller, kg m². */
  readonly inertia: number;
  /** Factor by which it may be off. */
  readonly factor: number;
}

/** Grams of a plastic propeller a square inch of its diameter squared. Common practice, from kitchen scales. */
const massPerSquareInch = 0.16e-3;
const inch = 0.0254;
/** Blades are heavier at the root: this much of a rod of their mass and length. From memory. */
const rodShare = 0.6;
/** The motor's bell, in shares of a usual propeller's inertia. From memory. */
const bell = 0.3;

/** Factors by which an inertia may be off that follows from a measured lag, from the propeller's own, from nothing. */
const factors = { measured: 1.25, weighed: 1.6, usual: 2.5 };

/** By the lag that the script sets; else from propeller and motor. */
export const rotorOf = model<[], Rotor>('rotor', (own) => {
  const given = own.quantity('motor.response-time');
  if (given === null) return estimatedRotor(own);
  const carried = carriedBy(own);
  const damping = carried === null ? null : dampingInHover(carried.value.likely);
  if (carried === null || damping === null) return null;
  return { value: { inertia: given * damping, factor: factors.measured }, assumed: carried.assumed };
});

const estimatedRotor = model<[], Rotor>('estimated rotor', (own) => {
  const carried = carriedBy(own);
  if (carried === null) return null;
  const { diameter } = carried.value.likely.drive.propeller;
  const usual = bladesInertia(massPerSquareInch * (diameter / inch) ** 2, diameter);
  const mass = own.quantity('prop.mass');
  const known = own.quantity('prop.inertia') ?? (mass === null ? null : bladesInertia(mass, diameter));
  const inertia = (known ?? usual) + bell * usual;
  const assumed = known === null ? ['the inertia of a usual plastic propeller of this diameter'] : [];
  return {
    value: {
      inertia,
      // Controllers add a lag of their own, and a braking motor is slower than a driven one.
      factor: known === null ? factors.usual : factors.weighed,
    },
    assumed: [...carried.assumed, ...assumed],
  };
});

function bladesInertia(mass: number, diameter: number): number {
  return rodShare * rodInertia(mass, diameter);
}

function dampingInHover(carried: Carried): number | null {
  const state = hovering(carried);
  return state === null ? null : dampingAt(carried, state.motor.speed);
}

export const motorLagOf = model<[], MotorLag>('motor lag', (own) => {
  const given = own.quantity('motor.response-time');
  if (given === null) return estimatedMotorLag(own);
  const why = 'motor.response-time, as the script sets it';
  return { value: { likely: given, low: 0.8 * given, high: 1.2 * given, why } };
});

/** What follows from motor and propeller, whatever the script sets. */
export const estimatedMotorLag = model<[], MotorLag>('estimated motor lag', (own) => {
  const rotor = estimatedRotor(own);
  const carried = carriedBy(own);
  const damping = carried === null ? null : dampingInHover(carried.value.likely);
  if (rotor === null || damping === null) return null;
  const { inertia, factor } = rotor.value;
  const likely = inertia / damping;
  const why = `${fine(inertia, 'g*m^2')} / ${fine(damping, 'N*m*s')}, inertia over what motor, losses and air hold against a change of speed`;
  return { value: { likely, low: likely / factor, high: likely * factor, why }, assumed: rotor.assumed };
});

export const motorLagFigures: readonly FigureSource[] = [
  {
    id: 'motor-lag',
    title: 'Lag of motor and propeller in the hover',
    unit: 'ms',
    from: ['motor.response-time', 'prop.inertia', 'prop.mass', 'motor.resistance', 'esc.drive.brake'],
    compute(view) {
      const lag = motorLagOf(view);
      if (lag === null) return null;
      const { likely, low, high, why } = lag.value;
      return { likely: 1e3 * likely, low: 1e3 * low, high: 1e3 * high, why, assumed: lag.assumed };
    },
  },
];
