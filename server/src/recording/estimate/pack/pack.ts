import type { Carried } from '../../../figures/carried';
import type { Doubtful } from '../../../figures/uncertain';
import type { MeasuredAnswer, MeasuredSpan, PackGave } from '../../report';
import { expectedResistance } from '../beside-script';
import { type FlightRows, meanBetween } from '../flight-rows';
import { give, measuredBy, quantile, scaled, withheld } from '../span';
import { type PackFit, packFit } from './pack-fit';
import { type PackRows, packRows } from './pack-rows';

/** A load that changes by less than this share of itself tells no resistance. Common practice. */
const leastSwing = 0.12;
const leastSeconds = 6;

/** What the pack gave. */
export function* packGave(
  rows: FlightRows,
  parts: Doubtful<Carried> | null,
): Generator<void, MeasuredAnswer<PackGave>> {
  const [voltage, current] = [rows.channel('voltage'), rows.channel('current')];
  if (voltage === null && current === null)
    return withheld('No column says the voltage or the current of the pack.', 'Log both beside the gyro.');
  yield;
  const usedCharge = current === null ? noCurrent('the charge') : chargeOf(rows, current);
  const lowestVoltage = voltage === null ? null : lowestOf(rows, voltage);
  if (voltage === null || current === null) {
    const why = voltage === null ? noVoltage : noCurrent('the resistance');
    return measuredBy(
      {
        openVoltage: why,
        resistanceAtOneSecond: why,
        resistanceAtTenSeconds: why,
        usedCharge,
        lowestVoltage,
      },
      basisOf(rows),
    );
  }
  const expected = parts === null ? null : expectedResistance(parts);
  const taken = yield* packRows(rows, voltage, current);
  const reason = whyNone(taken);
  const fit = reason === null ? yield* packFit(taken) : null;
  const fitted = (which: keyof PackFit) => reason ?? fittedIn(fit, which, taken);
  return measuredBy(
    {
      openVoltage: fitted('open'),
      resistanceAtOneSecond: fitted('atOneSecond'),
      resistanceAtTenSeconds: fitted('atTenSeconds'),
      usedCharge,
      ...(expected === null ? {} : { expected }),
      lowestVoltage,
    },
    basisOf(rows),
  );
}

/** The open voltage or a resistance of the fit, with what it rests on. */
function fittedIn(fit: PackFit | null, which: keyof PackFit, taken: PackRows): MeasuredAnswer<MeasuredSpan> {
  if (fit === null)
    return withheld(
      'Voltage and current do not move as a load moves a pack.',
      'Confirm both columns, their units and signs.',
    );
  const one = fit[which];
  if (which !== 'open' && one.high - one.low > one.likely)
    return withheld(
      'The load changed too little, or too quickly, to tell it from a pack that empties.',
      'Fly with climbs of some seconds between calm hovers.',
    );
  const basis = `${taken.seconds.toFixed(0)} s, with ${taken.low.toFixed(1)} to ${taken.high.toFixed(1)} A`;
  return which === 'open'
    ? measuredBy(one, `${basis}; at the start`)
    : measuredBy(scaled(one, 1000, 'mohm'), basis);
}

function basisOf({ seconds }: FlightRows): string {
  return `${seconds.toFixed(0)} s in the air, pack and leads together`;
}

const noVoltage = withheld('No column says the voltage of the pack.', 'Log it beside the current.');

function noCurrent(what: string): MeasuredAnswer<never> {
  return withheld(
    `No column says the current, and ${what} hangs on it.`,
    'Log the current, if the board measures it.',
  );
}

function whyNone({ seconds, low, high, mean }: PackRows): MeasuredAnswer<never> | null {
  if (seconds < leastSeconds)
    return withheld(
      `Only ${seconds.toFixed(1)} s with voltage and current.`,
      'Record half a minute of flight.',
    );
  if (!(mean > 0)) return withheld('The current is never above zero.', 'Confirm its column, unit and sign.');
  if (high - low < leastSwing * mean)
    return withheld(
      `The current stayed within ${low.toFixed(1)} to ${high.toFixed(1)} A.`,
      'Fly with climbs of some seconds between calm hovers.',
    );
  return null;
}

/** What a sensor that nobody has held against a charger may be off by: a share, and A. Common practice. */
const sensor = { share: 0.03, offset: 0.1 };

function chargeOf(
  { recording, stretches, rate }: FlightRows,
  current: Float32Array,
): MeasuredAnswer<MeasuredSpan> {
  // Of a file with one flight all counts: what was drawn before it and after as well.
  const { flights, time } = recording;
  if (flights.length === 1) {
    const seconds = (time.at(-1) ?? 0) - (time[0] ?? 0);
    return chargeMeasured(meanBetween(current, 0, time.length), seconds);
  }
  const [first, last] = [stretches[0], stretches.at(-1)];
  if (first === undefined || last === undefined) return noCurrent('the charge');
  const whole = (last.to - first.from) / rate;
  const means = stretches.map(({ from, to }) => ({ mean: meanBetween(current, from, to), rows: to - from }));
  const rows = means.reduce((sum, one) => sum + one.rows, 0);
  const mean = means.reduce((sum, one) => sum + one.mean * one.rows, 0) / rows;
  return chargeMeasured(mean, whole);
}

/** In a gap it flew on as it did about it. */
function chargeMeasured(mean: number, seconds: number): MeasuredAnswer<MeasuredSpan> {
  const charge = (mean * seconds) / 3.6;
  const off = Math.hypot(sensor.share * charge, (sensor.offset * seconds) / 3.6);
  return measuredBy(
    give(charge, off, 'mAh'),
    `${seconds.toFixed(0)} s, if the sensor is right to 3 % and 0.1 A`,
  );
}

/** The lowest for a quarter of a second: a single cell may be a wrong reading. */
function lowestOf({ stretches, rate }: FlightRows, voltage: Float32Array): MeasuredSpan | null {
  const size = Math.max(1, Math.round(rate / 4));
  const means = stretches.flatMap(({ from, to }) =>
    Array.from({ length: Math.floor((to - from) / size) }, (_, at) =>
      meanBetween(voltage, from + at * size, from + (at + 1) * size),
    ).filter((mean) => mean > 0),
  );
  if (means.length === 0) return null;
  const lowest = Math.min(...means);
  return give(lowest, Math.abs(quantile(means, 0.02) - lowest) + 0.005 * lowest, 'V');
}
