import type { CraftView } from '../../craft/view';
import { type AxisName, axisNames } from '../../figures/axis-names';
import { fullVoltage } from '../../figures/pack-in-view';
import { throttleOf } from '../../figures/throttle';
import { leastSquares } from '../../physics/least-squares';
import type { MeasuredAnswer } from '../report';
import type { FlightRows, NumberedChannel } from './flight-rows';
import { type Mix, mixOf } from './mix';
import { measuredBy, withheld } from './span';

/** What the board asked of the motors about each axis, as shares of their range; and the rows in which one of them had no room. */
export interface Commands {
  readonly of: ReadonlyMap<AxisName, Float32Array>;
  /** Why there is none of yaw, where it can't be told apart. */
  readonly withoutYaw: MeasuredAnswer<never> | null;
  /** 1 where a motor was at an end of its range, or nothing was logged of one. */
  readonly atLimit: Uint8Array;
  /** Share of the airborne rows in which one was. */
  readonly limited: number;
}

/** Outputs that lie so near to an end are at it. */
const atEnd = 0.002;
const rowsInOneGo = 20_000;
/** One row of so many shows where the floor is. */
const looked = 7;

/**
 * The motors' outputs un-mixed: what was done to them last is undone first. Raised for an empty pack, shaped for even
 * thrust, mixed by the layout: the shares of lift, roll, pitch and yaw with the least squares.
 */
export function* commandsOf(
  rows: FlightRows,
  view: CraftView | null,
): Generator<void, MeasuredAnswer<Commands>> {
  const motors = rows.numbered('motor');
  if (motors.length === 0)
    return withheld('No column says what the motors are told.', 'Log the outputs of all motors.');
  const mix = mixOf(view);
  if (mix.told === null || view === null) return mix.told === null ? mix : missingView;
  const { motors: count } = mix.told;
  if (motors.length !== count || motors.some(({ number }, at) => number !== at + 1))
    return withheld(
      `Outputs of ${motors.length} motors were logged; the script’s layout has ${count}.`,
      'Log the outputs of all motors, and say which column is which of them.',
    );
  const undoing = undoingOf(rows, view);
  if (undoing.told === null) return undoing;
  const weights = unmixed(mix.told);
  if (weights === null)
    return withheld('The axes of this layout can’t be told apart.', 'Look at craft.layout and motor.order.');
  return measuredBy(
    yield* commandsIn(rows, motors, { undo: undoing.told, weights, ends: endsOf(view, motors) }),
    mix.basis,
  );
}

const missingView = withheld('No craft script was named.', 'Name the script of the craft that was flown.');

/** The share that was asked of a motor, from what it was told in a row. */
type Undo = (output: number, row: number) => number;

const shapeSteps = 2000;

function undoingOf(rows: FlightRows, view: CraftView): MeasuredAnswer<Undo> {
  const throttle = throttleOf(view, fullVoltage(view));
  const even = view.quantityOr('power.even-thrust', 0);
  if (throttle === null || even === null)
    return withheld(
      'The script says something of thrust shape, output limit or even thrust that can’t be read.',
      'Mend what the script’s findings say of them.',
    );
  const isShaped = view.isSet('motor.thrust-shape');
  if (even > 0 && fullVoltage(view) === null)
    return withheld(
      'The board raises outputs as the pack empties, and the script doesn’t say what a full pack has.',
      'Write the pack that was flown: its chemistry and cells.',
    );
  const voltage = even > 0 ? rows.channel('voltage') : null;
  if (even > 0 && voltage === null)
    return withheld(
      'The board raises outputs as the pack empties (power.even-thrust), and no column says the voltage.',
      'Log the pack’s voltage.',
    );
  const shape = Float64Array.from({ length: shapeSteps + 1 }, (_, step) =>
    throttle.askedFor(step / shapeSteps, Number.POSITIVE_INFINITY),
  );
  const asked = (output: number) => {
    const place = Math.max(0, Math.min(1, output)) * shapeSteps;
    const below = Math.min(shapeSteps - 1, Math.floor(place));
    const [low, high] = [shape[below] ?? 0, shape[below + 1] ?? 0];
    return low + (place - below) * (high - low);
  };
  const lowered = (output: number, row: number) =>
    voltage === null ? output : output / throttle.raisedAt(voltage[row] ?? Number.NaN);
  return measuredBy(isShaped ? (output, row) => asked(lowered(output, row)) : lowered, '');
}

/** For each axis, what each motor's share counts in it: rows of (MᵀM)⁻¹Mᵀ for the columns lift and axes. */
function unmixed({ motors, shares }: Mix): ReadonlyMap<AxisName, readonly number[]> | null {
  const axes = axisNames.filter((axis) => shares[axis] !== null);
  const table = Array.from({ length: motors }, (_, motor) => [
    1,
    ...axes.map((axis) => shares[axis]?.[motor] ?? 0),
  ]);
  const solved = leastSquares(
    table,
    table.map(() => 0),
  );
  if (solved === null) return null;
  return new Map(
    axes.map((axis, at) => [
      axis,
      table.map((row) =>
        row.reduce((sum, one, index) => sum + one * (solved.inverse[at + 1]?.[index] ?? 0), 0),
      ),
    ]),
  );
}

interface CommandEnds {
  readonly least: number;
  readonly most: number;
}

/** A floor that shows in the outputs is the board's idle; some boards log what they ask for below it. */
function endsOf(view: CraftView, motors: readonly NumberedChannel[]): CommandEnds {
  const idle = view.quantityOr('motor.idle', null) ?? 0;
  const lid = view.quantityOr('motor.output-limit', 1) ?? 1;
  const isBelow = ({ values }: NumberedChannel) => {
    for (let row = 0; row < values.length; row += looked) {
      const value = values[row] ?? Number.NaN;
      if (value > atEnd && value < idle - atEnd) return true;
    }
    return false;
  };
  const isFloor = !motors.some(isBelow);
  return { least: isFloor ? idle : 0, most: lid };
}

function* commandsIn(
  rows: FlightRows,
  motors: readonly NumberedChannel[],
  {
    undo,
    weights,
    ends,
  }: { undo: Undo; weights: ReadonlyMap<AxisName, readonly number[]>; ends: CommandEnds },
): Generator<void, Commands> {
  const count = motors[0]?.values.length ?? 0;
  const axes = [...weights].map(([axis, weight]) => ({ axis, weight, values: new Float32Array(count) }));
  const atLimit = new Uint8Array(count).fill(1);
  let [all, limited, since] = [0, 0, 0];
  for (const { from, to } of rows.airborne)
    for (let row = from; row < to; row += 1) {
      since += 1;
      if (since % rowsInOneGo === 0) yield;
      let isLimited = 0;
      for (const one of axes) one.values[row] = 0;
      for (const [motor, { values }] of motors.entries()) {
        const output = values[row] ?? Number.NaN;
        if (!(output > ends.least + atEnd && output < ends.most - atEnd)) isLimited = 1;
        const asked = undo(output, row);
        for (const one of axes) one.values[row] = (one.values[row] ?? 0) + (one.weight[motor] ?? 0) * asked;
      }
      atLimit[row] = isLimited;
      all += 1;
      limited += isLimited;
    }
  return {
    of: new Map(axes.map(({ axis, values }) => [axis, values])),
    withoutYaw: weights.has('yaw') ? null : withoutYaw,
    atLimit,
    limited: limited / Math.max(1, all),
  };
}

const withoutYaw = withheld(
  'The script doesn’t say which way the motors turn, or its layout does not tell which of them turn alike.',
  'Write motor.spin.',
);
