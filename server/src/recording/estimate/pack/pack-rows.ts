import { type FlightRows, meanBetween } from '../flight-rows';
import { quantile } from '../span';

/** Voltage and current ten times a second, each the mean of the rows meanwhile. */
export interface PackRows {
  /** Of a row, s. */
  readonly step: number;
  readonly voltage: readonly number[];
  readonly current: readonly number[];
  /** Whether nothing was read, as in a gap: what was about it stands there. */
  readonly isFilled: readonly boolean[];
  readonly seconds: number;
  /** Of the current: nine tenths lie between, A. */
  readonly low: number;
  readonly high: number;
  readonly mean: number;
}

const perSecond = 10;

export function* packRows(
  { stretches, rate }: FlightRows,
  voltage: Float32Array,
  current: Float32Array,
): Generator<void, PackRows> {
  const size = Math.max(1, Math.round(rate / perSecond));
  const [first, last] = [stretches[0]?.from ?? 0, stretches.at(-1)?.to ?? 0];
  const [volts, amperes, isFilled]: [number[], number[], boolean[]] = [[], [], []];
  for (let from = first; from + size <= last; from += size) {
    if (volts.length % 100 === 99) yield;
    const [one, other] = [meanBetween(voltage, from, from + size), meanBetween(current, from, from + size)];
    const isThere = one > 0 && !Number.isNaN(other);
    volts.push(isThere ? one : (volts.at(-1) ?? Number.NaN));
    amperes.push(isThere ? other : (amperes.at(-1) ?? 0));
    isFilled.push(!isThere);
  }
  return {
    step: size / rate,
    voltage: volts,
    current: amperes,
    isFilled,
    seconds: isFilled.filter((one) => !one).length * (size / rate),
    low: quantile(amperes, 0.05),
    high: quantile(amperes, 0.95),
    mean: amperes.reduce((sum, one) => sum + one, 0) / amperes.length,
  };
}
