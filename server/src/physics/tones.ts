/** A band of frequencies that one kind of noise covers, Hz. */
export interface ToneBand {
  /** 1: the turning of the motor itself; the number of blades: the blades' passing; and so on. */
  readonly harmonic: number;
  readonly from: number;
  readonly to: number;
}

/** Turns a second of a speed in rad/s. */
export function turnsPerSecond(speed: number): number {
  return speed / (2 * Math.PI);
}

/** The bands of the first harmonics between two speeds (rad/s), and of the blades' passing. */
export function toneBands(slow: number, fast: number, harmonics: readonly number[]): readonly ToneBand[] {
  const [from, to] = [turnsPerSecond(slow), turnsPerSecond(fast)];
  return harmonics.map((harmonic) => ({ harmonic, from: harmonic * from, to: harmonic * to }));
}

/** Electrical revolutions a turn: pairs of magnet poles. */
export function polePairs(poles: number): number {
  return poles / 2;
}
