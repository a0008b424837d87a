import { type AxisName, axisNames } from '../../../figures/axis-names';
import { binPowers } from '../../../physics/random-signal';
import { segmentsOf, type WelchSetup } from '../../../physics/welch';
import type { AxisShaken, MeasuredNoise, NoiseMoment } from '../../measured-noise';
import type { AxisNoise, MeasuredAnswer } from '../../report';
import type { RecordingStep } from '../../step';
import { type FlightRows, meanBetween } from '../flight-rows';
import { measuredBy, withheld } from '../span';
import { noiseOf } from './noise';
import { doing, lowestShaking, shortSetup, shortStarts } from './shaken';

/** As many moments of a flight tell where the motors took what follows them. Ours. */
const mostMoments = 48;
/** Segments between two breaths: some milliseconds. */
const inOneGo = 48;

/** (rad/s)² in (deg/s)². */
const degrees = (180 / Math.PI) ** 2;

/** The noise before the board's filters on a flight; withheld where that was not logged. */
export function* unfilteredNoise(rows: FlightRows): Generator<RecordingStep, MeasuredAnswer<MeasuredNoise>> {
  const none = withheld(
    `${rows.recording.name} has no column of the gyro from before the board’s filters.`,
    'Have the board log it, about all three axes, and take that recording.',
  );
  if (axisNames.every((axis) => rows.channel(`unfiltered-gyro.${axis}`) === null)) return none;
  const { noise } = yield* noiseOf(rows, null);
  if (noise.told === null) return noise;
  const logged = noise.told.filter(({ peaksIn }) => peaksIn === 'unfiltered-gyro');
  if (logged.length === 0) return none;
  return measuredBy(yield* doing(noiseIn(rows, logged), 0.9, 'noise before the filters'), noise.basis);
}

function* noiseIn(rows: FlightRows, logged: readonly AxisNoise[]): Generator<void, MeasuredNoise> {
  const setup = shortSetup(rows);
  const starts = shortStarts(rows, setup);
  const { frequencies } = segmentsOf(setup);
  const first = frequencies.findIndex((frequency) => frequency >= lowestShaking);
  const axes: AxisShaken[] = [];
  for (const { axis, peaks } of logged) {
    const powers = yield* meanPowers(rows, axis, setup, starts);
    const tones = peaks
      .filter(({ source }) => source === 'standing')
      .map(({ frequency, aboveFloor }) => ({ frequency: frequency.likely, above: aboveFloor.likely }));
    axes.push({ axis, powers: powers.subarray(first), tones });
  }
  return {
    name: rows.recording.name,
    isSimulated: rows.recording.isSimulated === true,
    rate: rows.rate,
    frequencies: frequencies.subarray(first),
    axes,
    moments: yield* momentsOf(rows, axes, setup, starts, first),
  };
}

function* meanPowers(
  rows: FlightRows,
  axis: AxisName,
  setup: WelchSetup,
  starts: readonly number[],
): Generator<void, Float64Array> {
  const { frequencies, addTo } = segmentsOf(setup);
  const values = rows.channel(`unfiltered-gyro.${axis}`) ?? new Float32Array();
  const density = new Float64Array(frequencies.length);
  let segments = 0;
  for (const [at, start] of starts.entries()) {
    if (at % inOneGo === inOneGo - 1) yield;
    if (addTo(density, values, start)) segments += 1;
  }
  const by = degrees / Math.max(1, segments);
  return binPowers(frequencies, density, lowestShaking).map((power) => power * by);
}

/** Evenly all over the flight; those with a cell that says nothing are left out. */
function* momentsOf(
  rows: FlightRows,
  axes: readonly AxisShaken[],
  setup: WelchSetup,
  starts: readonly number[],
  first: number,
): Generator<void, readonly NoiseMoment[]> {
  const speeds = rows.numbered('speed');
  if (speeds.length === 0) return [];
  const { frequencies, addTo } = segmentsOf(setup);
  const every = Math.ceil(starts.length / mostMoments);
  const moments: NoiseMoment[] = [];
  for (let at = 0; at < starts.length; at += every) {
    yield;
    const start = starts[at] ?? 0;
    const turns = speeds.map(
      ({ values }) => meanBetween(values, start, start + setup.segment) / (2 * Math.PI),
    );
    const powers = axes.flatMap(({ axis }) => {
      const density = new Float64Array(frequencies.length);
      const values = rows.channel(`unfiltered-gyro.${axis}`) ?? new Float32Array();
      if (!addTo(density, values, start)) return [];
      return [
        binPowers(frequencies, density, lowestShaking)
          .subarray(first)
          .map((power) => power * degrees),
      ];
    });
    if (powers.length === axes.length && !turns.some(Number.isNaN)) moments.push({ turns, powers });
  }
  return moments;
}
