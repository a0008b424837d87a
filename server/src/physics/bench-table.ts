import { leastSquares, leverage } from './least-squares';

/**
 * One line of a motor maker's table: at the pack's plug, V and A, for one motor with its controller. Thrust in N, speed
 * in rad/s, torque in Nm, the throttle as a share: each null where the page does not tell it.
 */
export interface BenchRow {
  readonly voltage: number;
  readonly current: number;
  readonly thrust: number | null;
  readonly speed: number | null;
  readonly torque: number | null;
  readonly throttle: number | null;
}

/** Something fitted to rows, with how far they lie from it, as a share (rms). */
export interface FittedLaw {
  readonly value: number;
  readonly spread: number;
}

/** What a propeller makes of the square of its speed: thrust in N s², or drag in N m s². Null without such rows. */
export function squareLaw(rows: readonly BenchRow[], part: 'thrust' | 'torque'): FittedLaw | null {
  const pairs = rows.flatMap((row) => {
    const value = row[part];
    return value === null || row.speed === null || row.speed <= 0 ? [] : [[row.speed ** 2, value] as const];
  });
  const sum = (of: (pair: readonly [number, number]) => number) =>
    pairs.reduce((total, pair) => total + of(pair), 0);
  const value = sum(([square, one]) => square * one) / sum(([square]) => square * square);
  if (!(value > 0)) return null;
  const missed = sum(([square, one]) => (one / (value * square) - 1) ** 2);
  return { value, spread: Math.sqrt(missed / pairs.length) };
}

/** What the watts of a table tell of a motor. */
export interface PowerFit {
  /** ohm */
  readonly resistance: number;
  /** Torque that is lost to friction and iron, Nm: the motor's constant times its current without a load. */
  readonly friction: number;
  /** How far the rows lie from it, as a share (rms). */
  readonly spread: number;
  /** By how much the resistance may be off, as a share (one standard error). */
  readonly doubt: number;
}

const steps = 30;

/** A motor's speed constant (rad/s a volt), and what its controller loses as a share of volts times the motor's amperes. */
export interface OnStand {
  readonly speedConstant: number;
  readonly controllerLoss: number;
}

/**
 * Winding and friction from speed, torque and power of rows: V I = QΩ + TΩ + R ((Q + T) K)² + c V (Q + T) K, K the speed
 * constant, c what the controller loses. The pack's current is not the motor's, so only their power is used; and no
 * throttle is taken for a duty.
 * Null for fewer than three such rows, or where no winding above 0 comes of them.
 * Source: power balance of the first-order motor model (M. Drela, from memory), by Gauss and Newton; shares of the power
 * are what is made least.
 */
export function powerFit(rows: readonly BenchRow[], stand: OnStand): PowerFit | null {
  const { speedConstant, controllerLoss } = stand;
  const points = rows.flatMap(({ voltage, current, speed, torque }) =>
    speed === null || torque === null
      ? []
      : [{ power: voltage * current, speed, torque, lost: controllerLoss * voltage }],
  );
  if (points.length < 3) return null;
  let [resistance, friction] = [0, 0];
  for (let step = 0; step < steps; step += 1) {
    const columns = points.map(({ power, speed, torque, lost }) => {
      const amperes = (torque + friction) * speedConstant;
      const more = speed + (2 * resistance * amperes + lost) * speedConstant;
      return [amperes ** 2 / power, more / power];
    });
    const missed = points.map(({ power, speed, torque, lost }) => {
      const amperes = (torque + friction) * speedConstant;
      return 1 - ((torque + friction) * speed + (resistance * amperes + lost) * amperes) / power;
    });
    const fit = leastSquares(columns, missed);
    if (fit === null) return null;
    const [more = 0, harder = 0] = fit.coefficients;
    resistance += more;
    friction += harder;
    if (Math.abs(more) > 1e-9 * Math.abs(resistance) || Math.abs(harder) > 1e-9 * Math.abs(friction))
      continue;
    if (resistance <= 0 || friction < 0) return null;
    const square = missed.reduce((sum, one) => sum + one ** 2, 0);
    const variance = (square / Math.max(1, points.length - 2)) * leverage(fit.inverse, [1, 0]);
    const doubt = Math.sqrt(variance) / resistance;
    return { resistance, friction, spread: Math.sqrt(square / points.length), doubt };
  }
  return null;
}

/**
 * The propeller's drag (N m s²) that takes what is left of the power of rows without a torque, of a motor that is
 * known. Power and speed alone tell either the winding or the drag, and not both. `speedOf`: rad/s; null: not known.
 */
export function dragByPower(
  rows: readonly BenchRow[],
  motor: OnStand & { readonly resistance: number; readonly friction: number },
  speedOf: (row: BenchRow) => number | null,
): FittedLaw | null {
  const found = rows.flatMap((row) => {
    const speed = speedOf(row);
    const torque = speed === null || speed <= 0 ? null : torqueAt(row, speed, motor);
    return speed === null || torque === null ? [] : [torque / speed ** 2];
  });
  if (found.length === 0 || found.some((one) => one <= 0)) return null;
  const value = Math.exp(found.reduce((sum, one) => sum + Math.log(one), 0) / found.length);
  const missed = found.reduce((sum, one) => sum + Math.log(one / value) ** 2, 0);
  return { value, spread: Math.sqrt(missed / found.length) };
}

/** The positive root of R K² q² + (Ω + c V K) q = P, less the friction. */
function torqueAt(
  { voltage, current }: BenchRow,
  speed: number,
  { speedConstant, controllerLoss, resistance, friction }: Parameters<typeof dragByPower>[1],
): number {
  const power = voltage * current;
  const square = resistance * speedConstant ** 2;
  const straight = speed + controllerLoss * voltage * speedConstant;
  return (2 * power) / (straight + Math.sqrt(straight ** 2 + 4 * square * power)) - friction;
}

/**
 * The resistance (ohm) that the volts of a row at full throttle lose by, with a speed constant (rad/s a volt): only
 * there does the whole of the voltage reach the motor, and the pack's current with it.
 */
export function loadedResistance(
  { voltage, current, speed }: BenchRow,
  speedConstant: number,
): number | null {
  return speed === null || current <= 0 ? null : (voltage - speed / speedConstant) / current;
}

/**
 * Speed constant and resistance by the volts of rows, V d = Ω/K + R I/d, with the throttle d as the duty: right for some
 * controllers and wrong for others, so it only ever speaks against what is printed. Null where rows have more speed
 * than that lets them have, and for fewer than three.
 */
export function voltFit(
  rows: readonly BenchRow[],
  speedConstant: number,
): { readonly speedConstant: number; readonly resistance: number } | null {
  const points = rows.flatMap(({ voltage, current, speed, throttle }) =>
    speed === null || throttle === null || throttle <= 0
      ? []
      : [{ volts: throttle * voltage, amperes: current / throttle, speed }],
  );
  if (points.length < 3) return null;
  if (points.some(({ volts, speed }) => speed / speedConstant > volts)) return null;
  const fit = leastSquares(
    points.map(({ amperes, speed }) => [speed, amperes]),
    points.map(({ volts }) => volts),
  );
  const [slower = 0, resistance = 0] = fit?.coefficients ?? [];
  return slower > 0 ? { speedConstant: 1 / slower, resistance } : null;
}
