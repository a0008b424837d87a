/**
 * Torque (Nm) on the body a newton that the hardest-working motor changes its thrust by, where every motor works as
 * much as it sits off the axis (arms in m, one for each motor): Σ a² / max|a|. That is the mix with the least effort.
 * Source: pseudo-inverse of the motors' arms; the sums for each layout are those of plane geometry.
 */
export function mixedArm(arms: readonly number[]): number {
  const longest = Math.max(...arms.map(Math.abs));
  return longest > 0 ? arms.reduce((sum, arm) => sum + arm * arm, 0) / longest : 0;
}

/**
 * Thrust of two propellers above each other as a share of what they give side by side, at equal power: the induced
 * power factor to the power of −2/3.
 * Source: momentum theory; factors from 1.16 (measured, Dingeldein 1954, from memory) to 1.28 (momentum theory for a
 * lower rotor in the fully contracted wake), likely 1.22 (balanced torques).
 */
export function coaxialThrust(factor: number): number {
  return factor ** (-2 / 3);
}

export const coaxialFactors = { low: 1.16, likely: 1.22, high: 1.28 } as const;
