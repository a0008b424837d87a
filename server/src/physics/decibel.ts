/** Decibels over a milliwatt of a power in watts: 10 log10(power / 1 mW). Domain: above 0. By definition. */
export function decibelsOverMilliwatt(power: number): number {
  return 10 * Math.log10(power / 1e-3);
}

/** A power in watts from decibels over a milliwatt. By definition. */
export function wattsFrom(decibels: number): number {
  return 1e-3 * 10 ** (decibels / 10);
}

/**
 * Power (W) that an even radiator would need for the same strength in the antenna's best direction, from the
 * power at the antenna (W) and its gain over an even radiator (dB): power × 10^(gain / 10).
 * Source: ITU Radio Regulations, article 1.161 (equivalent isotropically radiated power).
 */
export function radiatedPower(power: number, gain: number): number {
  return power * 10 ** (gain / 10);
}

/**
 * Radiated power (W, as above) that makes a field of so many V/m at a distance of so many metres:
 * (field × distance)² / 30. Domain: far field in free space.
 * Source: plane wave in free space with 120π ohm, e.g. ITU-R P.525, section on field strength.
 */
export function powerOfField(field: number, distance: number): number {
  return (field * distance) ** 2 / 30;
}
