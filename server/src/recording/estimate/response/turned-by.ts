import { type AxisName, axisNames } from '../../../figures/axis-names';
import { leastSquaresOfSums } from '../../../physics/least-squares';
import type { FlightRows } from '../flight-rows';

/** What the motors are told about one axis, un-mixed by what the flight itself shows; its size is any. */
export interface TurnedBy {
  readonly of: ReadonlyMap<AxisName, Float32Array>;
}

const rowsInOneGo = 20_000;
/** So many rows tell a mixer; of a longer flight every second, third, … is looked at. */
const mostRows = 100_000;
/** A motor whose output moves by less than this share with what an axis lacks is not told apart from noise. */
const leastShare = 1e-3;

/**
 * Which way each motor turns the craft, from the flight: a controller tells each motor more the more an axis lacks of
 * what the sticks ask for, so that the least squares of the outputs on what all three axes lack are the columns of its
 * mixer. Un-mixed by them. Null where the motors, or what was asked about an axis, were not logged.
 */
export function* turnedBy(rows: FlightRows): Generator<void, TurnedBy | null> {
  const motors = rows.numbered('motor').map(({ values }) => values);
  const lacks = axisNames.map((axis) => {
    const [wanted, gyro] = [rows.channel(`wanted.${axis}`), rows.channel(`gyro.${axis}`)];
    return wanted === null || gyro === null ? null : { wanted, gyro };
  });
  const known = lacks.flatMap((one, at) => (one === null ? [] : [{ axis: axisNames[at], ...one }]));
  if (motors.length < 3 || known.length !== axisNames.length) return null;
  const sums = yield* sumsOf(rows, motors, known);
  const mixes = motors.map((_, motor) => leastSquaresOfSums(sums.normal, sums.right[motor] ?? []));
  if (mixes.some((mix) => mix === null)) return null;
  const columns = axisNames.map((_, axis) => mixes.map((mix) => mix?.coefficients[axis + 1] ?? 0));
  if (columns.some((column) => Math.max(...column.map(Math.abs)) < leastShare)) return null;
  const unmixed = unmixedBy(columns);
  if (unmixed === null) return null;
  const of = new Map(axisNames.map((axis) => [axis, new Float32Array(motors[0]?.length ?? 0)] as const));
  const into = [...of.values()].map((values, at) => ({ values, weights: unmixed[at] ?? [] }));
  let since = 0;
  for (const { from, to } of rows.airborne)
    for (let row = from; row < to; row += 1) {
      since += 1;
      if (since % rowsInOneGo === 0) yield;
      for (const { values, weights } of into) {
        let sum = 0;
        for (let motor = 0; motor < motors.length; motor += 1)
          sum += (weights[motor] ?? 0) * (motors[motor]?.[row] ?? Number.NaN);
        values[row] = sum;
      }
    }
  return { of };
}

interface Lack {
  readonly wanted: Float32Array;
  readonly gyro: Float32Array;
}

/** Of the rows [1, what each axis lacks], and of these with each motor. */
function* sumsOf(rows: FlightRows, motors: readonly Float32Array[], lacks: readonly Lack[]) {
  const width = lacks.length + 1;
  const normal = Array.from({ length: width }, () => new Array<number>(width).fill(0));
  const right = motors.map(() => new Array<number>(width).fill(0));
  const line = new Array<number>(width).fill(1);
  let since = 0;
  const every = Math.max(1, Math.floor((rows.seconds * rows.rate) / mostRows));
  for (const { from, to } of rows.airborne)
    for (let row = from; row < to; row += every) {
      since += 1;
      if (since % rowsInOneGo === 0) yield;
      let check = 0;
      for (const [at, { wanted, gyro }] of lacks.entries()) {
        const lack = (wanted[row] ?? Number.NaN) - (gyro[row] ?? Number.NaN);
        line[at + 1] = lack;
        check += lack;
      }
      for (const values of motors) check += values[row] ?? Number.NaN;
      if (Number.isNaN(check)) continue;
      for (let one = 0; one < width; one += 1) {
        const own = line[one] ?? 0;
        const into = normal[one] as number[];
        for (let other = 0; other < width; other += 1)
          into[other] = (into[other] ?? 0) + own * (line[other] ?? 0);
        for (const [motor, values] of motors.entries()) {
          const sum = right[motor] as number[];
          sum[one] = (sum[one] ?? 0) + own * (values[row] ?? 0);
        }
      }
    }
  return { normal, right };
}

/** Rows of the least squares that give back what each axis and the lift ask for; null where two of them are alike. */
function unmixedBy(columns: readonly (readonly number[])[]): readonly (readonly number[])[] | null {
  const motors = columns[0]?.length ?? 0;
  // Each as large as the others, and the lift first.
  const all = [new Array<number>(motors).fill(1), ...columns.map(scaledToOne)];
  const normal = all.map((one) =>
    all.map((other) => one.reduce((sum, value, at) => sum + value * (other[at] ?? 0), 0)),
  );
  const solved = leastSquaresOfSums(
    normal,
    all.map(() => 0),
  );
  if (solved === null) return null;
  return columns.map((_, axis) =>
    Array.from({ length: motors }, (_none, motor) =>
      all.reduce((sum, one, at) => sum + (solved.inverse[axis + 1]?.[at] ?? 0) * (one[motor] ?? 0), 0),
    ),
  );
}

function scaledToOne(column: readonly number[]): readonly number[] {
  const most = Math.max(...column.map(Math.abs));
  return column.map((value) => value / most);
}
