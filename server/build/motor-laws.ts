import { inBase } from '../src/catalog/known-parameter';
import type { ListedMotorRow, LoadedMotorRow, MotorFile, MotorLaws } from '../src/catalog/model/motors';
import {
  estimateByLaw,
  fitMotorLaw,
  type MotorLaw,
  type MotorMeasure,
  measuresOf,
} from '../src/physics/motor-law';

/** The laws that the listed motors make; null where there are too few of them, or of one maker alone. */
export function motorLawsOf({ motors, underLoad }: MotorFile): MotorLaws | null {
  const listed = motors.map((row) => ({
    maker: row.maker,
    measures: measuresOf({
      statorDiameter: inBase(row.statorDiameter),
      statorHeight: inBase(row.statorHeight),
      mass: inBase(row.mass),
      speedConstant: inBase(row.kv),
    }),
    row,
  }));
  const lawOf = (quantity: (row: ListedMotorRow) => number, ...from: readonly MotorMeasure[]) =>
    asData(
      fitMotorLaw(
        listed.map(({ row, ...motor }) => ({ ...motor, quantity: quantity(row) })),
        from,
      ),
    );
  const resistance = (row: ListedMotorRow) => inBase(row.resistance);
  const idle = (row: ListedMotorRow) => inBase(row.idleCurrent);
  const constant = (row: ListedMotorRow) => 1 / inBase(row.kv) / Math.sqrt(inBase(row.resistance));
  const mass = lawOf((row) => 1e3 * inBase(row.mass), 'diameter', 'height');
  const pair = (quantity: typeof resistance, ...beside: readonly MotorMeasure[]) => {
    const [bySize, byMass] = [lawOf(quantity, 'volume', ...beside), lawOf(quantity, 'mass', ...beside)];
    return bySize === null || byMass === null ? null : { bySize, byMass };
  };
  const [windings, idles, constants] = [pair(resistance, 'kv'), pair(idle, 'kv'), pair(constant)];
  if (windings === null || idles === null || constants === null || mass === null) return null;
  const resistances = spreadOf(underLoad.map((row) => ratioTo(windings.bySize, row)));
  const speeds = spreadOf(underLoad.map((row) => inBase(row.kvUnderLoad) / inBase(row.kv)));
  return {
    resistance: windings,
    idleCurrent: idles,
    motorConstant: constants,
    mass,
    underLoad: { resistance: resistances, kv: speeds },
  };
}

function asData(law: MotorLaw | null) {
  if (law === null) return null;
  return {
    from: [...law.from],
    coefficients: law.coefficients.map(short),
    factor: short(law.factor),
    inverse: law.inverse.map((row) => row.map(short)),
    farthest: short(law.farthest),
  };
}

/** The resistance that throttle and speed see, as a ratio to what the law gives of the motor's winding. */
function ratioTo(law: MotorLaw, row: LoadedMotorRow): number {
  const measures = measuresOf({
    statorDiameter: inBase(row.statorDiameter),
    statorHeight: inBase(row.statorHeight),
    mass: null,
    speedConstant: inBase(row.kv),
  });
  const winding = estimateByLaw(law, measures)?.likely ?? Number.NaN;
  return inBase(row.resistanceUnderLoad) / winding;
}

/** The middle of a dozen, and their ends: the next one lies between these eleven times of thirteen. */
function spreadOf(values: readonly number[]) {
  const sorted = [...values].sort((one, other) => one - other);
  const half = (sorted.length - 1) / 2;
  const middle = ((sorted[Math.floor(half)] ?? 0) + (sorted[Math.ceil(half)] ?? 0)) / 2;
  return { low: short(Math.min(...sorted)), likely: short(middle), high: short(Math.max(...sorted)) };
}

/** With as many digits as the data are good for: the same on every machine. */
function short(value: number): number {
  return Number(value.toPrecision(8));
}
