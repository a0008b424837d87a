import { idleCurrentAt, type Motor } from './motor';

/** Heat at which copper of 1 kg warms by 1 K, J. Source: Engineering ToolBox, Metals – Specific Heats. */
export const copperSpecificHeat = 390;

/** By which share the resistance of copper grows a kelvin, of that at 20 °C. Source: IEC 60028, as quoted. */
export const copperGrowth = 3.93e-3;

/** K: the temperature that resistances are printed for. */
export const printedAt = 293.15;

/**
 * How many times its resistance at 20 °C a copper winding has at a temperature (K): 1 + α (T − 20 °C).
 * Source: IEC 60028. Domain: above about −60 °C.
 */
export function copperRatio(temperature: number): number {
  return 1 + copperGrowth * (temperature - printedAt);
}

/** What a current (A) turns into heat in a winding of a resistance (ohm at 20 °C) that is so warm (K), W: R I². */
export function copperLoss(resistance: number, current: number, temperature: number): number {
  return resistance * copperRatio(temperature) * current ** 2;
}

/**
 * What iron, bearings and air in a motor take at a speed (rad/s), W: K⁻¹ I0 Ω, the power that turns it without a load
 * less what heats the winding then.
 * Source: loss model of F. Saemi and M. Benedict (Texas A&M, 2024).
 */
export function ironLoss(motor: Motor, speed: number): number {
  return (idleCurrentAt(motor, speed) * speed) / motor.speedConstant;
}

/** A winding that keeps all of its heat. */
export interface Insulated {
  /** J/K */
  readonly capacity: number;
  /** What it is heated by at 20 °C, W. */
  readonly loss: number;
}

/**
 * Time (s) in which a copper winding warms from one temperature (K) to another, with the same current all the time and
 * no heat lost to anything: C/(α P) × ln((1 + α (to − 20 °C)) / (1 + α (from − 20 °C))). Whatever cools it makes it
 * longer: it is the least. None where it is as warm already.
 * Source: the adiabatic rise of IEC 60949, as quoted, with mass and resistance in place of the conductor's section.
 */
export function adiabaticTime({ capacity, loss }: Insulated, from: number, to: number): number {
  const rise = Math.log(copperRatio(to) / copperRatio(from)) / copperGrowth;
  return Math.max(0, (capacity * rise) / loss);
}
