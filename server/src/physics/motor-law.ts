import { dot, leastSquares, leverage } from './least-squares';

/** What a sales page tells of a motor, in its own units: mm, g, rpm a volt. `volume` is that of the stator, mm³. */
export type MotorMeasure = 'diameter' | 'height' | 'volume' | 'mass' | 'kv';

export type MotorMeasures = Readonly<Partial<Record<MotorMeasure, number>>>;

/** The same in SI, as far as it is told: m, m, kg, rad/s a volt. */
export interface MotorSize {
  readonly statorDiameter: number | null;
  readonly statorHeight: number | null;
  readonly mass: number | null;
  readonly speedConstant: number | null;
}

const perMinute = (2 * Math.PI) / 60;

export function measuresOf({ statorDiameter, statorHeight, mass, speedConstant }: MotorSize): MotorMeasures {
  const diameter = statorDiameter === null ? undefined : 1e3 * statorDiameter;
  const height = statorHeight === null ? undefined : 1e3 * statorHeight;
  const isSized = diameter !== undefined && height !== undefined;
  return {
    ...(diameter === undefined ? {} : { diameter }),
    ...(height === undefined ? {} : { height }),
    ...(isSized ? { volume: (Math.PI / 4) * diameter ** 2 * height } : {}),
    ...(mass === null ? {} : { mass: 1e3 * mass }),
    ...(speedConstant === null ? {} : { kv: speedConstant / perMinute }),
  };
}

/**
 * A power law through motors of which everything is printed: e^c0 × first^c1 × second^c2 ….
 * Source of the method: M. Budinger and others, Scaling laws for the preliminary design of multirotor drones,
 * Aerospace Science and Technology 98 (2020), which fits motors alike.
 */
export interface MotorLaw {
  readonly from: readonly MotorMeasure[];
  readonly coefficients: readonly number[];
  /** 90 % of the motors lie within it, up and down, of what the law says that was fitted without their maker. */
  readonly factor: number;
  readonly inverse: readonly (readonly number[])[];
  /** The farthest of the motors that it was fitted to, as a leverage. */
  readonly farthest: number;
}

/** A motor with the measures of a law, with the quantity that the law is for, and who made it. */
export interface ListedMotor {
  readonly maker: number;
  readonly measures: MotorMeasures;
  readonly quantity: number;
}

/** Null where the motors do not tell the measures apart, or a maker is all that there is. */
export function fitMotorLaw(motors: readonly ListedMotor[], from: readonly MotorMeasure[]): MotorLaw | null {
  const fit = fitted(motors, from);
  if (fit === null) return null;
  const { rows, coefficients, inverse } = fit;
  const makers = [...new Set(motors.map(({ maker }) => maker))];
  const errors = makers.flatMap((maker) => {
    const without = fitted(
      motors.filter((motor) => motor.maker !== maker),
      from,
    );
    return motors.flatMap((motor, index) =>
      motor.maker !== maker || without === null
        ? []
        : [Math.abs(Math.log(motor.quantity) - dot(rows[index] ?? [], without.coefficients))],
    );
  });
  if (errors.length < motors.length) return null;
  const farthest = Math.max(...rows.map((row) => leverage(inverse, row)));
  return { from, coefficients, factor: Math.exp(quantile(errors, 0.9)), inverse, farthest };
}

function fitted(motors: readonly ListedMotor[], from: readonly MotorMeasure[]) {
  const rows = motors.flatMap(({ measures }) => {
    const row = rowOf(measures, from);
    return row === null ? [] : [row];
  });
  if (rows.length < motors.length || rows.length === 0) return null;
  const fit = leastSquares(
    rows,
    motors.map(({ quantity }) => Math.log(quantity)),
  );
  return fit === null ? null : { rows, ...fit };
}

function rowOf(measures: MotorMeasures, from: readonly MotorMeasure[]): readonly number[] | null {
  const row = [1];
  for (const measure of from) {
    const value = measures[measure];
    if (value === undefined || value <= 0) return null;
    row.push(Math.log(value));
  }
  return row;
}

/** Between two of the sorted values, in proportion. */
function quantile(values: readonly number[], share: number): number {
  const sorted = [...values].sort((one, other) => one - other);
  const at = share * (sorted.length - 1);
  const [low, high] = [sorted[Math.floor(at)] ?? 0, sorted[Math.ceil(at)] ?? 0];
  return low + (at - Math.floor(at)) * (high - low);
}

/**
 * What a law says of a motor, with the factor that holds 90 %, up and down; null where a measure is missing. Outside
 * of the motors that were fitted the factor grows with the distance, as a regression's prediction interval does.
 */
export function estimateByLaw(
  law: MotorLaw,
  measures: MotorMeasures,
): { readonly likely: number; readonly factor: number } | null {
  const row = rowOf(measures, law.from);
  if (row === null) return null;
  const beyond = Math.max(0, leverage(law.inverse, row) - law.farthest);
  return {
    likely: Math.exp(dot(row, law.coefficients)),
    factor: Math.exp(Math.log(law.factor) * Math.sqrt(1 + beyond)),
  };
}
