import type { Carried } from '../../figures/carried';
import type { Doubtful } from '../../figures/uncertain';
import type { Hovered, MeasuredAnswer, MeasuredSpan } from '../report';
import { expectedThrottle, thrustScale } from './beside-script';
import { type CalmWindow, calmWindows, heldThrottle, hoverWindows } from './calm';
import { type FlightRows, meanBetween } from './flight-rows';
import { give, meanOf, measuredBy, quantile, withheld } from './span';

const fewestWindows = 4;
/** Neighbours lean on the same gust, and are taken together in threes. */
const inGroups = 3;

/** What it takes to hover, from the calm parts of the flight, beside what the script's parts let expect. */
export function* hoverOf(
  rows: FlightRows,
  expected: Doubtful<Carried> | null,
): Generator<void, MeasuredAnswer<Hovered>> {
  const throttle = heldThrottle(rows);
  if (throttle === null)
    return withheld('No column says the throttle, or what the motors are told.', 'Log the throttle.');
  const windows = yield* calmWindows(rows);
  if (windows === null)
    return withheld(
      'No column says how the craft turns, so nobody can say when it hovered.',
      'Log the gyro.',
    );
  if (windows.length < fewestWindows)
    return withheld(
      `Only ${(0.5 * windows.length).toFixed(1)} s in which it neither turned nor its throttle moved.`,
      'Hold a calm hover for ten seconds.',
    );
  const hover = yield* hoverWindows(rows, windows);
  if (hover.length < fewestWindows)
    return withheld(
      `Only ${(0.5 * hover.length).toFixed(1)} s of calm flight with the thrust that carries it.`,
      'Hold a calm hover for ten seconds.',
    );
  const means = hover.map(({ from, to }) => meanBetween(throttle, from, to));
  const scatter = meanOf(thirds(means), '') ?? give(quantile(means, 0.5), widest, '');
  const off = Math.hypot((scatter.high - scatter.low) / 2, climbError * scatter.likely);
  if (off > widest * scatter.likely)
    return withheld(
      'The throttle was held at places too far apart to tell which of them was the hover.',
      'Hold a calm hover for ten seconds.',
    );
  const likely = give(100 * scatter.likely, 100 * off, '%');
  const voltage = meanIn(rows, 'voltage', hover, 'V')?.likely ?? null;
  const beside = expected === null ? null : expectedThrottle(expected, voltage);
  return measuredBy(
    {
      throttle: likely,
      current: meanIn(rows, 'current', hover, 'A'),
      ...(beside === null ? {} : { expected: beside }),
      thrustScale: expected === null ? null : thrustScale(expected, likely, voltage),
    },
    `${(0.5 * hover.length).toFixed(0)} s of calm hover`,
  );
}

/** Nobody logged how it climbed meanwhile: a share of the throttle. Common practice. */
const climbError = 0.02;
const widest = 0.2;

function thirds(values: readonly number[]): readonly number[] {
  const size = values.length >= 4 * inGroups ? inGroups : 1;
  return Array.from({ length: Math.floor(values.length / size) }, (_, at) => {
    const group = values.slice(at * size, (at + 1) * size);
    return group.reduce((sum, one) => sum + one, 0) / group.length;
  });
}

function meanIn(
  rows: FlightRows,
  name: 'voltage' | 'current',
  windows: readonly CalmWindow[],
  unit: string,
): MeasuredSpan | null {
  const values = rows.channel(name);
  if (values === null) return null;
  const means = windows.map(({ from, to }) => meanBetween(values, from, to)).filter((mean) => mean > 0);
  const mean = meanOf(means, unit);
  // What the sensor itself is off by nobody can say here.
  return mean === null
    ? null
    : give(mean.likely, Math.hypot(mean.high - mean.likely, 0.03 * mean.likely), unit);
}
