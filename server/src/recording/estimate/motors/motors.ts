import type { MeasuredAnswer, MotorWork } from '../../report';
import type { RecordingStep } from '../../step';
import { type CalmWindow, calmWindows, hoverWindows } from '../calm';
import { type FlightRows, meanBetween, type NumberedChannel } from '../flight-rows';
import { doing } from '../noise/shaken';
import { give, meanOf, measuredBy, scaled, withheld } from '../span';
import { type LagRows, lagRows } from './lag-rows';
import { lagOf } from './motor-lag';

/** So near to its ends an output is at them. */
const atEnd = 0.002;
const leastSeconds = 3;

/** How the motors work, each and beside the others. */
export function* motorsOf(rows: FlightRows): Generator<RecordingStep, MeasuredAnswer<readonly MotorWork[]>> {
  const motors = rows.numbered('motor');
  if (motors.length === 0)
    return withheld('No column says what the motors are told.', 'Log the outputs of all motors.');
  if (rows.seconds < leastSeconds)
    return withheld(`Only ${rows.seconds.toFixed(1)} s in the air.`, 'Record half a minute of flight.');
  const rowsOf = lagRows(rows);
  const calm = yield* doing(calmHover(rows), 0.81, 'the hover');
  const isCalm = calm.length >= 6;
  const windows = isCalm ? calm : secondsOf(rows);
  const shares = balanceOf(motors, windows);
  const work: MotorWork[] = [];
  for (const [at, { number, values }] of motors.entries()) {
    yield { share: 0.82, doing: `motor ${number}` };
    const lag = lagMeasured(rowsOf.get(number), rows);
    work.push({
      motor: number,
      ...limitsOf(rows, values),
      harder: harderOf(shares[at] ?? []),
      lag: yield* doing(lag, 0.82 + 0.02 * at, `motor ${number}`),
    });
  }
  return measuredBy(
    work,
    isCalm
      ? `${rows.seconds.toFixed(0)} s in the air; beside each other over ${(0.5 * calm.length).toFixed(0)} s of calm hover`
      : `${rows.seconds.toFixed(0)} s in the air, none of it calm enough to be compared in the hover alone`,
  );
}

function* calmHover(rows: FlightRows): Generator<void, readonly CalmWindow[]> {
  return yield* hoverWindows(rows, (yield* calmWindows(rows)) ?? []);
}

function* lagMeasured(taken: LagRows | undefined, rows: FlightRows): Generator<void, MotorWork['lag']> {
  if (taken !== undefined) return yield* lagOf(taken);
  return rows.airborne.length === 0
    ? withheld('No whole stretch of flight.', 'Record a flight without gaps.')
    : withheld(
        'No column says how fast this motor turns.',
        'Log the motors’ speeds, if the controllers tell them.',
      );
}

function limitsOf(rows: FlightRows, values: Float32Array): Pick<MotorWork, 'mean' | 'atFull' | 'atIdle'> {
  let [full, idle, count] = [0, 0, 0];
  for (const { from, to } of rows.airborne)
    for (let row = from; row < to; row += 1) {
      const value = values[row] ?? Number.NaN;
      if (Number.isNaN(value)) continue;
      count += 1;
      if (value >= 1 - atEnd) full += 1;
      if (value <= atEnd) idle += 1;
    }
  const means = secondsOf(rows).map(({ from, to }) => meanBetween(values, from, to));
  const mean = meanOf(means, '') ?? give(means[0] ?? Number.NaN, 1, '');
  return { mean: scaled(mean, 100, '%'), atFull: full / count, atIdle: idle / count };
}

/** The flight in the air, second by second. */
function secondsOf({ airborne, rate }: FlightRows): readonly CalmWindow[] {
  const size = Math.round(rate);
  return airborne.flatMap(({ from, to }) =>
    Array.from({ length: Math.floor((to - from) / size) }, (_, at) => ({
      from: from + at * size,
      to: from + (at + 1) * size,
    })),
  );
}

/** Of each motor, in each window: how much harder it works than all together. */
function balanceOf(
  motors: readonly NumberedChannel[],
  windows: readonly CalmWindow[],
): readonly (readonly number[])[] {
  const means = motors.map(({ values }) => windows.map(({ from, to }) => meanBetween(values, from, to)));
  return means.map((own) =>
    own.flatMap((mean, at) => {
      const all = means.reduce((sum, other) => sum + (other[at] ?? Number.NaN), 0) / means.length;
      return all > 0.02 ? [mean / all - 1] : [];
    }),
  );
}

/** A gust that leans on the craft for some windows, and an idle end that is not quite where it is taken to be, %. */
const balanceError = 0.6;

/** Neighbouring windows go partly together: a third of them counts. */
function harderOf(shares: readonly number[]): MotorWork['harder'] {
  const every = shares.length >= 12 ? 3 : 1;
  const groups = Array.from({ length: Math.ceil(shares.length / every) }, (_, at) => {
    const group = shares.slice(at * every, (at + 1) * every);
    return group.reduce((sum, one) => sum + one, 0) / group.length;
  });
  const mean = scaled(meanOf(groups, '') ?? give(groups[0] ?? 0, 1, ''), 100, '%');
  return give(mean.likely, Math.hypot(mean.high - mean.likely, balanceError), '%');
}
