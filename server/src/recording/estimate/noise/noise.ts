import type { CraftView } from '../../../craft/view';
import { type AxisName, axisNames } from '../../../figures/axis-names';
import { halfRate } from '../../../physics/sampling';
import type { AxisNoise, MeasuredAnswer, MeasuredSpan, NoiseMap, Spectrum } from '../../report';
import type { RecordingStep } from '../../step';
import type { FlightRows } from '../flight-rows';
import { measuredBy, withheld } from '../span';
import { type Columns, type Load, loadColumns, loadOf } from './load';
import { ordersOf, standingOver } from './orders';
import { peaksOf } from './peaks-of';
import {
  doing,
  type LongSpectrum,
  loadsOf,
  longSetup,
  longSpectrum,
  lowestShaking,
  type ShortSpectra,
  shortSetup,
  shortSpectra,
  shortStarts,
} from './shaken';
import { tonesOf } from './standing';

/** With less of a flight nothing is said of its noise, s. */
const leastSeconds = 4;
/** Nor with rows that come more seldom, Hz. */
const leastRate = 60;

export interface NoiseMeasured {
  readonly noise: MeasuredAnswer<readonly AxisNoise[]>;
  readonly maps: MeasuredAnswer<readonly NoiseMap[]>;
}

type NoiseSignal = Spectrum['signal'];

/** What shakes, about each axis. */
export function* noiseOf(rows: FlightRows, view: CraftView | null): Generator<RecordingStep, NoiseMeasured> {
  const none = whyNone(rows);
  if (none !== null) return { noise: none, maps: none };
  const load = loadOf(rows);
  const setup = shortSetup(rows);
  const starts = shortStarts(rows, setup);
  const loads =
    load === null ? [] : yield* doing(loadsOf(load, starts, setup.segment), 0.02, 'how hard the motors work');
  const columns = loadColumns(loads);
  const axes: AxisNoise[] = [];
  const maps: NoiseMap[] = [];
  for (const [at, axis] of axisNames.entries()) {
    const about = aboutAxis({ rows, view, axis, load, starts, loads, columns });
    const one = yield* doing(about, 0.05 + 0.25 * at, `noise about ${axis}`);
    if (one === null) continue;
    axes.push(one.noise);
    if (one.map !== null) maps.push(one.map);
  }
  if (axes.length === 0) return { noise: holey, maps: holey };
  return { noise: measuredBy(axes, basisOf(rows, load, columns)), maps: mapsMeasured(maps, load, rows) };
}

const holey = withheld(
  'In no second of the flight does the gyro say something in each row.',
  'Look at the cells of its columns that say nothing, and log all of them in every row.',
);

function whyNone(rows: FlightRows): MeasuredAnswer<never> | null {
  if (axisNames.every((axis) => signalsOf(rows, axis).length === 0))
    return withheld('No column says how the craft turns.', 'Log the gyro about all three axes.');
  if (rows.rate < leastRate)
    return withheld(
      `Rows come ${rows.rate.toPrecision(3)} times a second: what shakes is faster.`,
      'Log the gyro at 500 rows a second or more.',
    );
  if (rows.seconds < leastSeconds)
    return withheld(
      `Only ${rows.seconds.toFixed(1)} s of flight without a gap.`,
      `Record ${leastSeconds} s in the air or more, better a minute with the throttle up and down.`,
    );
  return null;
}

function signalsOf(
  rows: FlightRows,
  axis: AxisName,
): readonly { signal: NoiseSignal; values: Float32Array }[] {
  return (['unfiltered-gyro', 'gyro'] as const).flatMap((signal) => {
    const values = rows.channel(`${signal}.${axis}`);
    return values === null ? [] : [{ signal, values }];
  });
}

interface NoiseInput {
  readonly rows: FlightRows;
  readonly view: CraftView | null;
  readonly axis: AxisName;
  readonly load: Load | null;
  readonly starts: readonly number[];
  readonly loads: readonly number[];
  readonly columns: Columns | null;
}

function* aboutAxis(
  about: NoiseInput,
): Generator<void, { readonly noise: AxisNoise; readonly map: NoiseMap | null } | null> {
  const { rows, axis, load, starts, loads, columns } = about;
  // Peaks are looked for before the board's filters where that is logged.
  const signals = signalsOf(rows, axis);
  const [first] = signals;
  if (first === undefined) return null;
  const setup = longSetup(rows);
  const spectra: Spectrum[] = [];
  const longs: LongSpectrum[] = [];
  for (const { signal, values } of signals) {
    const long = yield* longSpectrum(rows, values, setup);
    if (long.segments === 0) continue;
    longs.push(long);
    spectra.push(drawn(signal, long));
  }
  const [before] = longs;
  const after = longs.at(-1);
  if (before === undefined || after === undefined) return null;
  const short =
    columns === null
      ? null
      : yield* shortSpectra(axis, first.values, shortSetup(rows), { starts, loads, columns });
  yield;
  const standing = short === null ? null : standingOver(short);
  const follows = short !== null && standing !== null && load?.against === 'motor speed';
  const orders = follows ? yield* ordersOf(rows, short, standing) : null;
  yield;
  const tones = tonesOf(before);
  yield;
  const { peaks, untold } = peaksOf({
    view: about.view,
    rate: rows.rate,
    load,
    tones,
    spectra: short,
    standing,
    orders,
  });
  const noise: AxisNoise = {
    axis,
    spectra: spectra.reverse(),
    shaking: shakingOf(after),
    peaksIn: first.signal,
    peaks,
    ...(untold === 0 ? {} : { untold }),
  };
  return {
    noise,
    map:
      short === null || load === null || columns === null
        ? null
        : mapOf(axis, first.signal, short, load, columns),
  };
}

/** Root of the mean power; off by the scatter of the segments, of which neighbours share half their rows. */
function shakingOf({ powers }: LongSpectrum): MeasuredSpan {
  const mean = powers.reduce((sum, one) => sum + one, 0) / powers.length;
  const square = powers.reduce((sum, one) => sum + (one - mean) ** 2, 0) / Math.max(1, powers.length - 1);
  const off = 1.645 * Math.sqrt(square / Math.max(1, powers.length / 1.5));
  const root = (power: number) => Math.sqrt(Math.max(0, power));
  return { likely: root(mean), low: root(mean - off), high: root(mean + off), unit: 'deg/s' };
}

/** Points of a drawn spectrum. */
const mostPoints = 500;

function drawn(signal: NoiseSignal, { frequencies, density }: LongSpectrum): Spectrum {
  const together = Math.ceil((frequencies.length - 1) / mostPoints);
  const [hertz, decibels]: [number[], number[]] = [[], []];
  // The first bin is what stays when the mean is taken out.
  for (let from = 1; from < frequencies.length; from += together) {
    const group = density.subarray(from, from + together);
    const loudest = Math.max(...group);
    hertz.push(frequencies[from + group.indexOf(loudest)] ?? 0);
    decibels.push(inDecibels(loudest));
  }
  return { signal, frequencies: hertz, decibels };
}

function inDecibels(density: number): number {
  return Math.round(100 * 10 * Math.log10(Math.max(density, 1e-12))) / 100;
}

function mapOf(
  axis: AxisName,
  signal: NoiseSignal,
  spectra: ShortSpectra,
  load: Load,
  { edges }: Columns,
): NoiseMap {
  const rows = [...spectra.frequencies.keys()].slice(1);
  return {
    axis,
    signal,
    against: load.against,
    edges,
    frequencies: rows.map((bin) => spectra.frequencies[bin] ?? 0),
    decibels: rows.map((bin) =>
      spectra.columns.map(({ density, segments }) => (segments === 0 ? null : inDecibels(density[bin] ?? 0))),
    ),
  };
}

function basisOf(rows: FlightRows, load: Load | null, columns: Columns | null): string {
  const range = load === null || columns === null ? '' : `, ${rangeText(load, columns)}`;
  return `${rows.seconds.toFixed(0)} s in the air at ${rows.rate.toFixed(0)} rows a second${range}; from ${lowestShaking} to ${halfRate(rows.rate).toFixed(0)} Hz`;
}

function rangeText({ against }: Load, { edges }: Columns): string {
  const text = (value: number) =>
    against === 'motor speed' ? `${value.toFixed(0)}` : `${(100 * value).toFixed(0)} %`;
  const [low, high] = [text(edges[0] ?? 0), text(edges.at(-1) ?? 0)];
  return against === 'motor speed'
    ? `motors at ${low} to ${high} turns a second`
    : `${against} ${low} to ${high}`;
}

function mapsMeasured(
  maps: readonly NoiseMap[],
  load: Load | null,
  rows: FlightRows,
): MeasuredAnswer<readonly NoiseMap[]> {
  if (load === null)
    return withheld(
      'No column says how hard the motors worked.',
      'Log the motors’ speeds, or the throttle, beside the gyro.',
    );
  const [first] = maps;
  if (first === undefined)
    return withheld('No segment of the flight is whole.', 'Record a flight without gaps.');
  return measuredBy(maps, `${rows.seconds.toFixed(0)} s in the air, by ${load.against}`);
}
