import type { CraftView } from '../../craft/view';
import { type AxisName, axisNames } from '../../figures/axis-names';
import { CrossSpectra } from '../../physics/cross-spectrum';
import { frequencyResponse } from '../../physics/frequency-response';
import type { AxisResponse, Told } from '../report';
import type { RecordingStep } from '../step';
import { type AskedSegments, askedSegments, endedRows } from './asked';
import type { FlightRows } from './flight-rows';
import { flySteps } from './fly';
import { bandwidthOf, peakOf, phaseDelayTold } from './follows';
import { type AxisAnswer, answerOf, curveTold } from './response-curve';
import { doing } from './shaken';
import { told, withheld } from './span';

/** Rows that come more seldom do not show how a craft answers, Hz. */
const leastRate = 60;
/** With less of a flight nothing is said, s. */
const leastSeconds = 4;
/** What the sticks ask for must move by so much, rad/s rms. */
const leastMoved = 1;
/** With fewer independent segments chance alone makes them coherent. */
const fewestAverages = 6;

/** How the craft follows its sticks, about each axis. */
export function* responsesOf(
  rows: FlightRows,
  _view: CraftView | null,
): Generator<RecordingStep, Told<readonly AxisResponse[]>> {
  const none = whyNone(rows);
  if (none !== null) return none;
  const ended = yield* doing(endedRows(rows), 0.95, 'motors at a limit');
  const responses: AxisResponse[] = [];
  for (const axis of axisNames) {
    if (rows.channel(`wanted.${axis}`) === null || rows.channel(`gyro.${axis}`) === null) continue;
    responses.push(yield* doing(aboutAxis(rows, axis, ended), 0.96, `how it follows about ${axis}`));
  }
  return told(
    responses,
    `${rows.seconds.toFixed(0)} s in the air at ${rows.rate.toFixed(0)} rows a second, where the sticks moved`,
  );
}

function whyNone(rows: FlightRows): Told<never> | null {
  const has = (signal: 'wanted' | 'gyro') => axisNames.filter((axis) => rows.channel(`${signal}.${axis}`));
  if (has('wanted').length === 0)
    return withheld(
      'No column says what rates the sticks asked for.',
      'Have the board log the wanted rates about all three axes, in every row beside the gyro.',
    );
  if (!has('gyro').some((axis) => has('wanted').includes(axis)))
    return withheld(
      'About no axis is there both what the sticks asked for and the gyro behind the board’s filters.',
      'Log both about all three axes, in every row.',
    );
  if (rows.rate < leastRate)
    return withheld(
      `Rows come ${rows.rate.toPrecision(3)} times a second: a craft answers faster.`,
      'Log 500 rows a second or more.',
    );
  if (rows.seconds < leastSeconds)
    return withheld(
      `Only ${rows.seconds.toFixed(1)} s of flight without a gap.`,
      'Record a minute in the air or more.',
    );
  return null;
}

function* aboutAxis(
  rows: FlightRows,
  axis: AxisName,
  ended: Uint8Array | null,
): Generator<void, AxisResponse> {
  const asked = yield* askedSegments(rows, axis, ended);
  const why = asked === null ? null : whyNotAsked(asked, axis);
  const answer = asked === null || why !== null ? why : yield* answered(rows, axis, asked);
  if (answer === null) return allWithheld(axis, holey);
  if ('told' in answer) return allWithheld(axis, answer);
  return {
    axis,
    curve: curveTold(answer),
    bandwidth: bandwidthOf(answer),
    peak: peakOf(answer),
    phaseDelay: phaseDelayTold(answer),
    ...notYet,
  };
}

const holey = withheld(
  'In no part of the flight do gyro and sticks say something in each row.',
  'Look at the cells of their columns that say nothing, and log all of them in every row.',
);

const later = withheld('Not told of this recording.', 'Look at the answer along frequencies.');
const notYet = { step: later, delay: later, lag: later, margins: later };

function allWithheld(axis: AxisName, why: Told<never>): AxisResponse {
  return {
    axis,
    curve: why,
    bandwidth: why,
    peak: why,
    phaseDelay: why,
    step: why,
    delay: why,
    lag: why,
    margins: why,
  };
}

function whyNotAsked({ averages, moved, saturated, starts }: AskedSegments, axis: AxisName) {
  if (saturated > starts.length)
    return withheld(
      `Motors stood at a limit most of the time that the sticks asked for ${axis}: what comes then says nothing of the tune.`,
      `Fly smaller steps, in a hover and not in a climb. ${flySteps}`,
    );
  if (!(moved >= leastMoved))
    return withheld(
      `The sticks asked for too little about ${axis}: ${degreesText(moved)} in the mean, where ${degreesText(leastMoved)} are needed to stand out of noise and wind.`,
      flySteps,
    );
  if (averages < fewestAverages)
    return withheld(
      `The sticks moved about ${axis} for too short a time to tell an answer from chance.`,
      flySteps,
    );
  return null;
}

function degreesText(rate: number): string {
  return `${((180 / Math.PI) * rate).toFixed(0)} deg/s`;
}

/** Segments between two breaths: some milliseconds. */
const inOneGo = 24;

function* answered(
  rows: FlightRows,
  axis: AxisName,
  asked: AskedSegments,
): Generator<void, AxisAnswer | Told<never> | null> {
  const [wanted, gyro] = [rows.channel(`wanted.${axis}`), rows.channel(`gyro.${axis}`)];
  if (wanted === null || gyro === null) return null;
  const spectra = new CrossSpectra(asked.setup, 2);
  for (const [at, start] of asked.starts.entries()) {
    if (at % inOneGo === inOneGo - 1) yield;
    spectra.add([wanted, gyro], start);
  }
  if (spectra.segments === 0) return null;
  return answerOf(axis, frequencyResponse(spectra, 0, 1), asked);
}
