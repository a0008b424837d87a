import { type LearntTable, openQuestions } from '../../recording/open-recording';
import type {
  AxisNoise,
  Hovered,
  LinkKept,
  MeasuredAnswer,
  MeasuredSpan,
  MotorWork,
  PackGave,
  Peak,
  RecordingFinding,
  RecordingProposal,
  RecordingReport,
} from '../../recording/report';
import { columnText, saidColumnExamples } from '../../recording/said-column';
import { recordingQuestions } from '../../sheet/compare/recording-questions';
import {
  type BesideRecording,
  followRows,
  gainRows,
  lateRows,
  noScriptBeside,
} from '../../sheet/recording-rows';
import { measuredNumber, shortNumber } from '../../units/number-text';
import { levelColours, painted, type Terminal } from '../terminal';
import { spanText } from './measured-span-text';
import { axisRowLines } from './recording-axes-text';
import { visible } from './visible';
import { brokenLine } from './wrapped';

/** What one flight of a recording says, for people: what was left out first, then findings, then the pilot's questions. */
export function recordingText(
  report: RecordingReport,
  table: LearntTable,
  terminal: Terminal,
  beside: BesideRecording = noScriptBeside,
): string {
  const title = (text: string) => ['', painted(text, 'bold', terminal)];
  const { findings, noise, responses, motors, pack, hover, link, gains, proposals } = report;
  return linesText(
    [
      summaryLine(report),
      ...(report.leftOut.length === 0 ? [] : title('Not read, or to be known')),
      ...report.leftOut.map((one) => `  ${visible(one)}`),
      ...title('What its columns are taken for'),
      ...columnLines(table),
      ...(findings.length === 0 ? [] : title('What was found')),
      ...foundLines(findings, terminal),
      ...title(recordingQuestions.shake),
      ...measuredLines(noise, (axes) => axes.flatMap(axisLines)),
      ...title(recordingQuestions.follow),
      ...measuredLines(responses, (axes) => axisRowLines(followRows(axes, beside.models))),
      ...title(recordingQuestions.late),
      ...measuredLines(responses, (axes) => axisRowLines(lateRows(axes, beside.models))),
      ...title(recordingQuestions.motors),
      ...measuredLines(motors, (all) => all.flatMap(motorLines)),
      ...title(recordingQuestions.pack),
      ...measuredLines(pack, packLines),
      ...title(recordingQuestions.hover),
      ...measuredLines(hover, hoverLines),
      ...title(recordingQuestions.link),
      ...measuredLines(link, linkLines),
      ...title(recordingQuestions.gains),
      ...measuredLines(gains, (all) => axisRowLines(gainRows(all, beside.gains))),
      ...(proposals.length === 0 ? [] : title('What may be written into the script')),
      ...proposals.flatMap(proposalLines),
      '',
      'Measured on one flight: others differ. A test hover decides, and hands on the motors after it.',
    ],
    terminal,
  );
}

export function foundLines(findings: readonly RecordingFinding[], terminal: Terminal): readonly string[] {
  return findings.flatMap(({ level, sentence, advice }) => [
    `  ${painted(level, levelColours[level], terminal)}: ${visible(sentence)}`,
    `    ${visible(advice)}`,
  ]);
}

/** Lines for people, broken where the terminal is narrow. */
export function linesText(lines: readonly string[], terminal: Terminal): string {
  return `${lines.map((line) => brokenLine(line, terminal)).join('\n')}\n`;
}

export function summaryLine({ name, flight, flights, seconds, rate, isSimulated }: RecordingReport): string {
  const which = flights > 1 ? `, flight ${flight} of ${flights}` : '';
  const how = isSimulated ? 'simulated: nobody flew it' : '';
  return visible(
    [`${name}${which}: ${shortNumber(seconds)} s at ${shortNumber(rate)} rows a second`, how]
      .filter((part) => part !== '')
      .join('; '),
  );
}

/** What each column was taken for, with its reason; who confirmed it, or how to. */
export function columnLines({ confirmed, proposed, layout }: LearntTable): readonly string[] {
  const reasons = new Map(proposed.map(({ means, why }) => [means.heading, why]));
  const read = layout.columns.filter(({ channel }) => channel !== undefined);
  const rows = read.map((column) => {
    const why = reasons.get(column.heading);
    return visible(`  “${column.heading}”: ${columnText(column)}${why === undefined ? '' : `. ${why}`}`);
  });
  return [
    ...rows,
    confirmed === null
      ? `  Nobody has confirmed this; --confirm <name of the logger> keeps it, and --column mends it: ${saidColumnExamples}.`
      : visible(`  As confirmed in ${confirmed.name}.`),
  ];
}

/** What has to be said before a layout can be kept. */
export function questionLines(table: LearntTable): readonly string[] {
  return openQuestions(table).map(({ column: { heading }, asks }) => {
    const open = asks.filter(({ keepsOut }) => keepsOut);
    // One answer is an answer to all that is asked of a column.
    const answers = open.flatMap(({ choices }) => choices.map(({ means }) => answerText(means)));
    const said = [...new Set([...answers, 'nothing'])].map((answer) => `"${heading} = ${answer}"`);
    return `“${heading}”: ${open.map(({ sentence }) => sentence).join(' ')} --column ${said.join(' or ')}`;
  });
}

type Means = LearntTable['layout']['columns'][number];

function answerText({ channel = 'nothing', unit, scale, zero, full, reversed }: Means): string {
  return [
    `${reversed === true ? '-' : ''}${channel}`,
    ...(unit === undefined || unit === '' ? [] : [`in ${unit}`]),
    ...(scale === undefined ? [] : [`times ${scale}`]),
    ...(full === undefined ? [] : [`from ${zero ?? 0} to ${full}`]),
  ].join(' ');
}

function measuredLines<T>(
  answer: MeasuredAnswer<T>,
  lines: (told: T) => readonly string[],
): readonly string[] {
  return 'reason' in answer
    ? [`  Not told: ${visible(answer.reason)} ${visible(answer.advice)}`.trimEnd()]
    : [...lines(answer.told), `  Rests on ${visible(answer.basis)}.`];
}

function axisLines({ axis, shaking, peaks, peaksIn, untold }: AxisNoise): readonly string[] {
  const tones = peaksIn === 'unfiltered-gyro' ? 'tones, before the board’s filters:' : 'tones:';
  return [
    `  ${axis}: ${spanText(shaking)}; ${peaks.length === 0 ? 'no tone stands out' : tones}`,
    ...peaks.map((peak) => `    ${peakText(peak)}`),
    ...(untold === undefined ? [] : [`    ${untold} more come and go`]),
  ];
}

function peakText({ frequency, aboveFloor, order, source, mayBeFolded, left }: Peak): string {
  return [
    `${spanText(frequency)}, ${spanText(aboveFloor)} above the floor: ${visible(source)}`,
    ...(order === null ? [] : [`${spanText(order)} times a turn`]),
    // Of a moving one it is known, and said.
    ...(mayBeFolded && order === null
      ? ['perhaps a higher tone, which too few rows a second show down here']
      : []),
    ...(left === null ? [] : [takenText(left)]),
  ].join('; ');
}

/** What is told of what filters leave ends here, dB. */
const leastLeft = -80;

function takenText(left: number): string {
  const taken = Math.round(-left);
  if (left <= leastLeft) return `the script’s filters take ${taken} dB or more off it`;
  return taken <= 0
    ? 'the script’s filters take nothing off it'
    : `the script’s filters take ${taken} dB off it`;
}

function motorLines({ motor, mean, atFull, atIdle, harder, lag }: MotorWork): readonly string[] {
  return [
    `  motor ${motor}: ${spanText(mean)} on average, ${harderText(harder)}; at full ${timeText(atFull)}, at idle ${timeText(atIdle)}`,
    ...(lag.told === null ? [] : [`    time constant ${spanText(lag.told)}`]),
  ];
}

/** `3.6 % harder than all together`, `4 % less hard …`, each with its span; as hard where the span says no more. */
function harderText(harder: MeasuredSpan): string {
  const { likely, low, high, unit } = harder;
  if (low <= 0 && high >= 0) {
    const most = Math.max(-low, high);
    return `as hard as all together, within ${measuredNumber(most, harder)} ${unit}`;
  }
  return likely >= 0
    ? `${spanText(harder)} harder than all together`
    : `${spanText({ likely: -likely, low: -high, high: -low, unit })} less hard than all together`;
}

/** `never`, `2.1 % of the time` */
function timeText(share: number): string {
  return share === 0 ? 'never' : `${shortNumber(100 * share, 2)} % of the time`;
}

function packLines(pack: PackGave): readonly string[] {
  const row = (what: string, { told, ...rest }: MeasuredAnswer<MeasuredSpan>) =>
    told !== null
      ? `  ${what}: ${spanText(told)}`
      : `  ${what}: not told. ${'reason' in rest ? `${visible(rest.reason)} ${visible(rest.advice)}` : ''}`.trimEnd();
  return [
    row('open voltage', pack.openVoltage),
    row('resistance of pack and leads at one second', pack.resistanceAtOneSecond),
    row('at ten seconds', pack.resistanceAtTenSeconds),
    ...(pack.expected === undefined ? [] : [`  by the script at ten seconds: ${spanText(pack.expected)}`]),
    row('charge used', pack.usedCharge),
    ...(pack.lowestVoltage === null ? [] : [`  lowest voltage: ${spanText(pack.lowestVoltage)}`]),
  ];
}

function hoverLines({ throttle, current, expected, thrustScale }: Hovered): readonly string[] {
  return [
    `  throttle ${spanText(throttle)}${current === null ? '' : `, ${spanText(current)}`}`,
    ...(expected === undefined ? [] : [`  by the script: throttle ${spanText(expected)}`]),
    ...(thrustScale === null
      ? []
      : [`  thrust beside what the script lets expect: ${spanText(thrustScale)} times`]),
  ];
}

function linkLines({ interval, longestGap, whole }: LinkKept): readonly string[] {
  return [
    `  a frame each ${spanText(interval)}, the longest gap ${spanText(longestGap)}, ${spanText(whole)} came whole`,
  ];
}

function proposalLines({ title, sets }: RecordingProposal): readonly string[] {
  return [
    `  ${visible(title)}`,
    ...sets.map(({ path, value, comment }) => `    ${visible(`${path} = ${value}  # ${comment}`)}`),
  ];
}
