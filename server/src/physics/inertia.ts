/** A mass at a distance: what it adds to the inertia is mass × distance². SI. */
export interface PlacedMass {
  readonly mass: number;
  readonly distance: number;
}

/** Moment of inertia (kg m²) of point masses about an axis: Σ m r². Source: mechanics, any textbook. */
export function pointInertia(masses: readonly PlacedMass[]): number {
  return masses.reduce((sum, { mass, distance }) => sum + mass * distance * distance, 0);
}

/** Moment of inertia (kg m²) of a box about the axis through its middle across two of its sides (m): m (a² + b²) / 12. */
export function boxInertia(mass: number, one: number, other: number): number {
  return (mass * (one * one + other * other)) / 12;
}

/** Moment of inertia (kg m²) of a thin rod about its middle: m l² / 12. A propeller of two blades is close to one. */
export function rodInertia(mass: number, length: number): number {
  return (mass * length * length) / 12;
}

/** Moment of inertia (kg m²) of a thin ring about its middle: m r². A motor's bell with its magnets is close to one. */
export function ringInertia(mass: number, radius: number): number {
  return mass * radius * radius;
}
