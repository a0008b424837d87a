import type { CraftView } from '../../../craft/view';
import { type AxisName, axisNames } from '../../../figures/axis-names';
import { CrossSpectra } from '../../../physics/cross-spectrum';
import {
  type FrequencyResponse,
  frequencyResponse,
  responseByInstrument,
  waited,
} from '../../../physics/frequency-response';
import { waitBehindLags } from '../../../physics/waits-and-lags';
import type { AxisResponse, MeasuredAnswer, MeasuredMargins } from '../../report';
import type { RecordingStep } from '../../step';
import { type Commands, commandsOf } from '../commands';
import { type FlightRows, meanBetween } from '../flight-rows';
import { doing } from '../noise/shaken';
import { measuredBy, withheld } from '../span';
import { type AskedSegments, askedSegments, endedRows } from './asked';
import { controllerSaid, whyNotByAnswer } from './controller-said';
import { flySteps } from './fly';
import { bandwidthOf, peakOf, phaseDelayMeasured } from './follows';
import { delayAndLag } from './late';
import { loopBehind, loopWithin, marginsMeasured } from './margins';
import { type AxisAnswer, answerBasis, answerOf, curveMeasured } from './response-curve';
import { stepMeasured } from './step-curve';
import { type TurnedBy, turnedBy } from './turned-by';

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
  view: CraftView | null,
): Generator<RecordingStep, MeasuredAnswer<readonly AxisResponse[]>> {
  const none = whyNone(rows);
  if (none !== null) return none;
  const commands = yield* doing(commandsOf(rows, view), 0.95, 'what the motors were told about each axis');
  const flight = {
    rows,
    view,
    // The script knows where a motor's range begins.
    ended:
      commands.told === null
        ? yield* doing(endedRows(rows), 0.95, 'motors at a limit')
        : commands.told.atLimit,
    commands,
    turns: turnsOf(rows),
    told: commands.told === null ? yield* doing(turnedBy(rows), 0.95, 'how the motors turn the craft') : null,
  };
  const responses: AxisResponse[] = [];
  for (const axis of axisNames) {
    if (rows.channel(`wanted.${axis}`) === null || rows.channel(`gyro.${axis}`) === null) continue;
    responses.push(yield* doing(aboutAxis(flight, axis), 0.96, `how it follows about ${axis}`));
  }
  const isAny = responses.some(({ curve }) => curve.told !== null);
  return measuredBy(
    responses,
    `${rows.seconds.toFixed(0)} s in the air at ${rows.rate.toFixed(0)} rows a second${isAny ? ', where the sticks moved' : ''}`,
  );
}

function whyNone(rows: FlightRows): MeasuredAnswer<never> | null {
  const has = (signal: 'wanted' | 'gyro') => axisNames.filter((axis) => rows.channel(`${signal}.${axis}`));
  if (has('wanted').length === 0)
    return withheld(
      'No column says what rates the sticks asked for.',
      'Say which column does, if one that was not read holds them; else have the board log the wanted rates about all three axes, in every row beside the gyro.',
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

function* aboutAxis(flight: FlightAnswered, axis: AxisName): Generator<void, AxisResponse> {
  const { rows, ended } = flight;
  const [wanted, gyro] = [rows.channel(`wanted.${axis}`), rows.channel(`gyro.${axis}`)];
  const asked = yield* askedSegments(rows, axis, ended);
  if (asked === null || wanted === null || gyro === null) return allWithheld(axis, holey);
  const why = whyNotAsked(asked, axis);
  if (why !== null) return allWithheld(axis, why);
  const motors = flight.commands.told?.of.get(axis) ?? flight.told?.of.get(axis);
  const spectra = yield* spectraOf(rows, asked, [wanted, gyro, ...(motors === undefined ? [] : [motors])], 0);
  if (spectra.segments === 0) return allWithheld(axis, holey);
  const rough = answerOf(axis, frequencyResponse(spectra, 0, 1), asked);
  if ('told' in rough) return allWithheld(axis, rough);
  // What comes late is looked at as much later: a window would cut its end off.
  const later = Math.max(
    0,
    Math.round(rows.rate * waitBehindLags({ ...rough.curve, deviation: rough.off }, []).wait),
  );
  const close = yield* spectraOf(rows, asked, [wanted, gyro.subarray(later)], later);
  const answer = answerOf(axis, waited(frequencyResponse(close, 0, 1), later / rows.rate), asked);
  if ('told' in answer) return allWithheld(axis, answer);
  const craft = motors === undefined ? null : responseByInstrument(spectra, 0, 2, 1);
  const late =
    craft === null || axis === 'yaw' ? null : yield* delayAndLag(axis, craft, asked.averages, rows.rate);
  return {
    axis,
    curve: curveMeasured(answer),
    bandwidth: bandwidthOf(answer),
    peak: peakOf(answer),
    phaseDelay: phaseDelayMeasured(answer),
    step: yield* stepMeasured(rows, answer),
    margins: marginsOf(flight, answer, craft),
    ...(late ?? (axis === 'yaw' ? ofYaw : withoutMotors)),
  };
}

/** Behind the controller of the script, or where nothing goes past the error by the answer alone. */
function marginsOf(
  { rows, view, commands, turns }: FlightAnswered,
  answer: AxisAnswer,
  craft: FrequencyResponse | null,
): MeasuredAnswer<MeasuredMargins> {
  const { axis, asked } = answer;
  const said = controllerSaid(view, axis, turns);
  const common = { axis, skew: 1 / rows.rate };
  if (said.told !== null && craft !== null && commands.told?.of.has(axis) === true)
    return marginsMeasured({
      ...common,
      by: 'controller',
      ...loopBehind(craft, said.told, asked.averages),
      basis: `the craft as measured behind ${said.basis}; ${answerBasis(answer)}`,
    });
  const why = whyNotByAnswer(view, axis);
  if (why === null)
    return marginsMeasured({
      ...common,
      by: 'answer',
      ...loopWithin(answer),
      basis: `the answer alone, without feedforward and with the derivative of the error; ${answerBasis(answer)}`,
    });
  if (said.told === null) return said;
  return commands.told === null ? commands : (commands.told.withoutYaw ?? unmixable);
}

interface FlightAnswered {
  readonly rows: FlightRows;
  readonly view: CraftView | null;
  readonly commands: MeasuredAnswer<Commands>;
  /** Of the motors a second, in the mean; null where it was not logged. */
  readonly turns: number | null;
  readonly ended: Uint8Array | null;
  readonly told: TurnedBy | null;
}

const yawHidden = withheld(
  'About yaw the motors’ own reaction turns the craft before their drag does, and hides what waits.',
  'Look at roll and pitch: filters and motors are the same.',
);
const ofYaw = { delay: yawHidden, lag: yawHidden };
const unmixable = withheld(
  'What the motors are told was not logged, or not about all axes what the sticks ask for.',
  'Log the outputs of all motors beside the gyro and what the sticks ask for, about all three axes.',
);
const withoutMotors = { delay: unmixable, lag: unmixable };

const holey = withheld(
  'In no part of the flight do gyro and sticks say something in each row.',
  'Look at the cells of their columns that say nothing, and log all of them in every row.',
);

function allWithheld(axis: AxisName, why: MeasuredAnswer<never>): AxisResponse {
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

/** Sticks that are let go ask for nothing: what rests farther off is no rate, times what moves and rad/s. Ours. */
const farthestRest = { times: 5, rate: 3 };

function whyNotAsked({ averages, moved, rests, saturated, starts }: AskedSegments, axis: AxisName) {
  if (Math.abs(rests) > Math.max(farthestRest.rate, farthestRest.times * moved))
    return withheld(
      `What the sticks asked for about ${axis} mostly rests at ${degreesText(rests)}: that is where a stick stands, and no rate.`,
      'Log the rates that the board makes of the sticks, or say what else that column holds.',
    );
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
const inOneGo = 8;

/** Of segments that have so many rows behind them that are still flown. */
function* spectraOf(
  { airborne }: FlightRows,
  { setup, starts }: AskedSegments,
  signals: readonly Float32Array[],
  later: number,
): Generator<void, CrossSpectra> {
  const spectra = new CrossSpectra(setup, signals.length);
  for (const [at, start] of starts.entries()) {
    if (at % inOneGo === inOneGo - 1) yield;
    const end = start + setup.segment;
    if (airborne.some(({ from, to }) => from <= start && end + later <= to)) spectra.add(signals, start);
  }
  return spectra;
}

function turnsOf(rows: FlightRows): number | null {
  const speeds = rows.numbered('speed');
  const [first] = [...rows.airborne].sort((one, other) => other.to - other.from - (one.to - one.from));
  if (speeds.length === 0 || first === undefined) return null;
  const mean = speeds.reduce((sum, { values }) => sum + meanBetween(values, first.from, first.to), 0);
  return mean / speeds.length / (2 * Math.PI);
}
