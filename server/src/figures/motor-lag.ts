import type { CraftView } from '../craft/view';
import { ringInertia, rodInertia } from '../physics/inertia';
import { beyondModel } from './beyond-model';
import type { Carried } from './carried';
import { dampingAt } from './damping';
import { carriedBy } from './drive';
import { hovering } from './drive-states';
import type { FigureSource } from './figure';
import { model } from './model';
import { motorMassOf } from './motor-size';
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
/** The motor's bell, in shares of a usual propeller's inertia, where nothing tells its size. From memory. */
const usualBell = 0.3;
/**
 * Else it is half of the motor's mass in a ring around the stator, with its middle so far outside of it, m. An
 * assumption, half of it on either side: with it and a usual propeller a five-inch craft comes to the 6.6e-6 kg m² of
 * a published one (FlightGoggles, MIT, 2019).
 */
const bellRing = { share: 0.5, outside: 2e-3 };

/** Factors by which an inertia may be off that follows from a measured lag, from the propeller's own, from nothing. */
const factors = { measured: 1.25, weighed: 1.6, usual: 2.5 };

/** By the lag that the script sets; else from propeller and motor. */
export const rotorOf = model<[], Rotor>('rotor', (own) => {
  const given = own.quantityOr('motor.response-time', null);
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
  const usual = bladesInertia(usualMass(diameter), diameter);
  const mass = own.quantityOr('prop.mass', null);
  const known =
    own.quantityOr('prop.inertia', null) ?? (mass === null ? null : bladesInertia(mass, diameter));
  const assumed = known === null ? ['the inertia of a usual plastic propeller of this diameter'] : [];
  const inertia = (known ?? usual) + (bellInertia(own, assumed) ?? usualBell * usual);
  return {
    value: {
      inertia,
      // Controllers add a lag of their own, and a braking motor is slower than a driven one.
      factor: known === null ? factors.usual : factors.weighed,
    },
    assumed: [...carried.assumed, ...assumed],
  };
});

function bellInertia(view: CraftView, assumed: string[]): number | null {
  const diameter = view.quantityOr('motor.stator-diameter', null);
  const mass = diameter === null ? null : motorMassOf(view, assumed);
  if (diameter === null || mass === null) return null;
  assumed.push('half of each motor’s mass in its bell');
  return ringInertia(bellRing.share * mass.likely, diameter / 2 + bellRing.outside);
}

/** Of a plastic propeller of a diameter (m), kg. */
function usualMass(diameter: number): number {
  return massPerSquareInch * (diameter / inch) ** 2;
}

/** What one of the craft's propellers is likely to weigh, kg; null where their diameter is not known. */
export function usualPropellerMass(view: CraftView): number | null {
  const diameter = view.quantity('prop.diameter');
  return diameter === null ? null : usualMass(diameter);
}

function bladesInertia(mass: number, diameter: number): number {
  return rodShare * rodInertia(mass, diameter);
}

function dampingInHover(carried: Carried): number | null {
  const state = hovering(carried);
  return state === null ? null : dampingAt(carried, state.motor.speed);
}

export const motorLagOf = model<[], MotorLag>('motor lag', (own) => {
  const given = own.quantityOr('motor.response-time', null);
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
    from: [
      'motor.response-time',
      'prop.inertia',
      'prop.mass',
      'motor.resistance',
      'motor.stator-diameter',
      'motor.mass',
      'esc.drive.brake',
    ],
    whyNot: beyondModel,
    compute(view) {
      const lag = motorLagOf(view);
      if (lag === null) return null;
      const { likely, low, high, why } = lag.value;
      return { likely: 1e3 * likely, low: 1e3 * low, high: 1e3 * high, why, assumed: lag.assumed };
    },
  },
];
