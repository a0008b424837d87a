/**
 * Voltage at the tap of a resistive divider, in volts: input × lower / (upper + lower). Ohms; no load at the
 * tap.
 */
export function dividerOutput(input: number, upper: number, lower: number): number {
  return (input * lower) / (upper + lower);
}

/** Highest input in volts that a divider brings down to a converter's reference (V). */
export function dividerLimit(reference: number, upper: number, lower: number): number {
  return (reference * (upper + lower)) / lower;
}

/**
 * Highest current in amperes that a current sensor can tell: (reference − offset) / scale, with the reference
 * of the converter and the sensor's output at no current in volts, and its scale in volts an ampere.
 * A shunt with an amplifier has the scale resistance × gain.
 */
export function currentLimitOfSensor(reference: number, scale: number, offset = 0): number {
  return (reference - offset) / scale;
}
