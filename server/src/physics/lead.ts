/** Copper at 20 degC: resistivity in ohm metres. Source: IEC 60028 (100 % IACS), as printed in NBS Circular 31. */
export const copperResistivity = 1.7241e-8;

/** Density (kg/m³) × specific heat (J/(kg K)) of copper, from memory: 8960 × 385. */
const copperHeatCapacity = 8960 * 385;

/**
 * Volts lost in a lead and its return: 2 × length × resistance a metre × current. Metres, ohms a metre at
 * 20 degC, amperes.
 */
export function leadDrop(length: number, resistancePerMetre: number, current: number): number {
  return 2 * length * resistancePerMetre * current;
}

/** Watts of heat in each metre of one wire: current squared × resistance a metre. */
export function leadHeat(resistancePerMetre: number, current: number): number {
  return current ** 2 * resistancePerMetre;
}

/**
 * Kelvin a second by which a bare copper wire warms at first, before any heat leaves it: heat a metre over
 * heat capacity a metre. The area in m² follows from the resistance a metre.
 * Domain: starts near 20 degC; hotter copper resists more, so the rate is the least there is.
 */
export function heatingRate(resistancePerMetre: number, current: number): number {
  const area = copperResistivity / resistancePerMetre;
  return leadHeat(resistancePerMetre, current) / (area * copperHeatCapacity);
}
