/** What holds a craft back in level flight: D = k V + ½ ρ f V². */
export interface Drag {
  /** Of rotors in the air that crosses them, k, N s/m: it goes with the speed. */
  readonly linear: number;
  /** Of all that stands in the air, f, m²: a flat plate that would hold back as much. */
  readonly area: number;
}

/** Drag (N) at an airspeed (m/s) in air of a density (kg/m³). */
export function dragAt({ linear, area }: Drag, speed: number, density: number): number {
  return linear * speed + (density / 2) * area * speed ** 2;
}

/** Airspeed (m/s) at which the drag comes to a force (N, above 0); without any drag there is none: infinite. */
export function speedForDrag({ linear, area }: Drag, force: number, density: number): number {
  const square = (density / 2) * area;
  return (2 * force) / (linear + Math.sqrt(linear ** 2 + 4 * square * force));
}

const fiveInches = 0.127;
/**
 * By how much published drags lie apart, as a factor to both sides of the likely one. Linear: 0.610 kg on six inches by
 * M. Faessler and others (IEEE RA-L 3(2), 2018) have 2.1 times what G. Hattenberger and others (IMAV 2022) found; a
 * research craft of 3.29 kg half of it. Area: twice and half as in `estimatedDragArea`.
 */
export const dragFactors = { linear: 2.1, area: 2 };

/**
 * Linear drag (N s/m) of a craft of a mass (kg) on propellers of a diameter (m): 0.105 + 0.087 m, measured from 0.547
 * to 1.067 kg on five inches (G. Hattenberger, M. Bronz, J.-P. Condomines, IMAV 2022). Smaller propellers cross the air
 * with less blade: it falls with their area, which is 1.8 times what a craft of 30 g has (J. Förster, 2015). Larger ones
 * showed no rise beyond that of their mass: 1.5 kg on ten inches (AHS Forum 72, 2016).
 */
export function estimatedLinearDrag(mass: number, diameter: number): number {
  return (0.105 + 0.087 * mass) * Math.min(1, diameter / fiveInches) ** 2;
}

/** Of a craft of a mass (kg): m². */
const bareAirframe = { mass: 1.5, area: 0.0135 };

/**
 * Drag area (m²) of a craft of a mass (kg) without its rotors, which goes with its surface, so with m^(2/3). At 1.5 kg
 * in the middle between 0.0209 m² of a bare airframe in the wind tunnel (C. Russell and others, AHS Forum 72, 2016, as
 * digitised) and 0.0088 m² of a fit credited to the same tests (B. Kadhiresan, M. Duffy, AIAA 2019-2873).
 */
export function estimatedDragArea(mass: number): number {
  return bareAirframe.area * (mass / bareAirframe.mass) ** (2 / 3);
}
