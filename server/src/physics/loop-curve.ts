import { type Complex, times, unit } from './complex';
import { chainResponse, type DigitalFilter, notchPlace } from './filter';
import { type Axis, type ControlPath, delayPhase, loopBehind, openLoop } from './loop';

/** A loop along rising frequencies (Hz), and anywhere between them. */
export interface LoopCurve {
  readonly frequencies: readonly number[];
  readonly values: readonly Complex[];
  readonly at: (frequency: number) => Complex;
}

/** A stretch of frequencies, Hz, from above 0. */
export interface Band {
  readonly from: number;
  readonly to: number;
}

/** Steps a decade in which a band is looked through. */
const stepsPerDecade = 16;

/** Any loop along the frequencies of a band. */
export function curveOf(at: (frequency: number) => Complex, band: Band): LoopCurve {
  const frequencies = evenly(band);
  return { frequencies, values: frequencies.map(at), at };
}

/** An axis along the frequencies of a band. */
export function axisCurve(axis: Axis, band: Band): LoopCurve {
  const { frequencies, seen, derived } = tableOf(axis.path, band);
  const values: Complex[] = [];
  for (const [step, frequency] of frequencies.entries()) {
    const [one, other] = [seen[step], derived[step]];
    if (one !== undefined && other !== undefined) values.push(loopBehind(axis, frequency, one, other));
  }
  return { frequencies, values, at: (frequency) => openLoop(axis, frequency) };
}

/** What filters and waits do along the frequencies of a band: all axes have them in common. */
interface Table {
  readonly band: Band;
  readonly frequencies: readonly number[];
  readonly seen: readonly Complex[];
  readonly derived: readonly Complex[];
}

const tables = new WeakMap<ControlPath, Table>();

function tableOf(path: ControlPath, band: Band): Table {
  const known = tables.get(path);
  if (known !== undefined && known.band.from === band.from && known.band.to === band.to) return known;
  const { gyroFilters, derivativeFilters, delay } = path;
  const frequencies = closeAtNotches(band, [...gyroFilters, ...derivativeFilters]);
  const wait = (frequency: number) => unit(-delayPhase(frequency, delay));
  const table: Table = {
    band,
    frequencies,
    seen: frequencies.map((each) => times(chainResponse({ filters: gyroFilters }, each), wait(each))),
    derived: frequencies.map((each) => chainResponse({ filters: derivativeFilters }, each)),
  };
  tables.set(path, table);
  return table;
}

function evenly({ from, to }: Band): readonly number[] {
  const count = Math.max(1, Math.ceil(Math.log10(to / from) * stepsPerDecade));
  return Array.from({ length: count + 1 }, (_, step) => from * (to / from) ** (step / count));
}

/** Where a notch turns the phase, in widths from its middle: the even steps would go past it. */
const flanks = [-2, -1, -0.5, -0.25, 0.25, 0.5, 1, 2];

function closeAtNotches(band: Band, filters: readonly DigitalFilter[]): readonly number[] {
  const near = [...new Set(filters)].flatMap((filter) => {
    const place = notchPlace(filter);
    return place === null ? [] : flanks.map((flank) => place.centre + flank * place.width);
  });
  if (near.length === 0) return evenly(band);
  const inside = near.filter((frequency) => frequency > band.from && frequency < band.to);
  return [...evenly(band), ...inside].sort((one, other) => one - other);
}
