import type { CraftView } from '../craft/view';
import { motorMassOf } from './motor-size';
import { type Estimate, withinFactor } from './uncertain';

/**
 * Share of a motor's mass that is the copper of its winding. An assumption: no published split of small outrunners
 * was found. Bell and magnets are about half of it, and of the other half iron, base, bearings and wires leave a third.
 */
export const copperShare = { likely: 0.15, low: 0.09, high: 0.25 };

/**
 * One motor's mass, kg, for what it can take in of heat: as it is told, else by its stator, else by how much torque its
 * winding gives for the watts. Null where none of these is known, or it is unlike all motors that are listed.
 */
export function heatedMass(view: CraftView, assumed: string[]): Estimate | null {
  const known = motorMassOf(view, assumed) ?? massByWinding(view, assumed);
  // What a sales page tells, or a scale.
  if (known === null) view.quantity('motor.mass');
  return known;
}

/** kg: of these the law that is turned about here was made. */
const listed = { least: 0.012, most: 0.11 };

/** By the law that gives a motor's constant from its mass, turned about. */
function massByWinding(view: CraftView, assumed: string[]): Estimate | null {
  const law = view.catalog.motorLaws?.motorConstant.byMass;
  const [base, slope] = law?.coefficients ?? [];
  const speedConstant = view.quantityOr('motor.kv', null);
  const resistance = view.quantityOr('motor.resistance', null);
  if (law === undefined || base === undefined || slope === undefined) return null;
  if (speedConstant === null || resistance === null) return null;
  const constant = 1 / (speedConstant * Math.sqrt(resistance));
  const mass = 1e-3 * Math.exp((Math.log(constant) - base) / slope);
  if (mass < listed.least || mass > listed.most) return null;
  const estimate = withinFactor(mass, law.factor ** (1 / slope));
  const span = `${view.short(estimate.low, 'g')} to ${view.short(estimate.high, 'g')}`;
  assumed.push(`motors of ${view.short(mass, 'g')} (${span}), estimated from resistance and kv`);
  return estimate;
}
