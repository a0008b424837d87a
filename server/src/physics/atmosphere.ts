/** Constants of the standard atmosphere. Source: ICAO Doc 7488, Manual of the ICAO Standard Atmosphere. */
const seaLevel = { temperature: 288.15, pressure: 101_325 };
const lapse = 0.0065; // K a metre
/** J/(kg K), dry air. */
export const gasConstant = 287.052_87;
const heatRatio = 1.4;
/** Standard gravity, m/s². Source: ICAO Doc 7488; BIPM, SI Brochure. */
export const gravity = 9.806_65;

/**
 * Pressure (Pa) of the standard atmosphere at a height above the sea (m).
 * Domain: below 11 000 m. Source: ICAO Doc 7488.
 */
export function standardPressure(height: number): number {
  const exponent = gravity / (gasConstant * lapse);
  return seaLevel.pressure * (1 - (lapse * height) / seaLevel.temperature) ** exponent;
}

/** Temperature (K) of the standard atmosphere at a height above the sea (m), below 11 000 m. */
export function standardTemperature(height: number): number {
  return seaLevel.temperature - lapse * height;
}

/** Density (kg/m³) of dry air at a pressure (Pa) and a temperature (K): p / (R T). Source: ideal gas law. */
export function airDensity(pressure: number, temperature: number): number {
  return pressure / (gasConstant * temperature);
}

/** Speed of sound (m/s) in dry air at a temperature (K): √(γ R T). Source: ICAO Doc 7488. */
export function soundSpeed(temperature: number): number {
  return Math.sqrt(heatRatio * gasConstant * temperature);
}
