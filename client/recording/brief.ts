import type { AxisNoise, FlightShaking, RecordingReport } from '../../server/src/lsp/recording-protocol';
import { type AnswerBeside, answersBeside } from '../../server/src/sheet/answers-beside';
import { likelyText, measuredText } from './measured-text';

/** What a recording said when it was read last, in as much room as a line of the build sheet has. */
export interface RecordingBrief {
  /** The file. */
  readonly uri: string;
  /** "shakes most about roll: 3.0 deg/s; 2 findings" */
  readonly text: string;
  /** Of that axis, dB at frequencies that rise by equal factors; empty where no noise was told. */
  readonly curve: readonly number[];
  /** How it shook and how late it was, to be held against later flights; what an earlier version noted does not say it. */
  readonly shaking?: Omit<FlightShaking, 'name'>;
  /** What stands beside the sheet's estimates; neither does an earlier version note it. */
  readonly answers?: readonly AnswerBeside[];
}

/** Hz: below it the craft flies on purpose. */
const lowest = 20;
const points = 60;

export function recordingBrief(uri: string, report: RecordingReport): RecordingBrief {
  const { noise, findings, hover, pack } = report;
  const axis = loudest(noise.told ?? []);
  const resistance = pack.told?.resistanceAtTenSeconds.told ?? pack.told?.resistanceAtOneSecond.told ?? null;
  const least = leastMargin(report);
  const said = [
    ...(report.isSimulated ? ['simulated'] : []),
    ...(axis === null ? [] : [`shakes most about ${axis.axis}: ${likelyText(axis.shaking)}`]),
    ...(hover.told === null ? [] : [`hovers at ${likelyText(hover.told.throttle)}`]),
    ...(least === null ? [] : [`phase margin ${likelyText(least.margin)} about ${least.axis}`]),
    ...(resistance === null ? [] : [`pack ${likelyText(resistance)}`]),
    findings.length === 1 ? '1 finding' : `${findings.length} findings`,
  ];
  return {
    uri,
    text: said.join('; '),
    curve: axis === null ? [] : curveOf(axis),
    shaking: shakingOf(report),
    answers: answersBeside(report, measuredText),
  };
}

/** How a craft shook about each axis, and how late it was. */
export function shakingOf({ rate, noise, responses }: RecordingReport): Omit<FlightShaking, 'name'> {
  return {
    rate,
    axes: (noise.told ?? []).map(({ axis, shaking }) => ({ axis, shaking })),
    late: (responses.told ?? []).map(({ axis, delay, margins }) => ({
      axis,
      delay: delay.told,
      phaseMargin: margins.told?.phaseMargin ?? null,
    })),
  };
}

function leastMargin({ responses }: RecordingReport) {
  const all = (responses.told ?? []).flatMap(({ axis, margins: { told } }) =>
    told === null ? [] : [{ axis, margin: told.phaseMargin }],
  );
  return all.sort((one, other) => one.margin.likely - other.margin.likely)[0] ?? null;
}

function loudest(axes: readonly AxisNoise[]): AxisNoise | null {
  return [...axes].sort((one, other) => other.shaking.likely - one.shaking.likely)[0] ?? null;
}

/** The loudest of the bins that each point stands for, so that no tone is lost. */
function curveOf({ spectra }: AxisNoise): readonly number[] {
  const spectrum = spectra[0];
  const highest = spectrum?.frequencies.at(-1) ?? 0;
  if (spectrum === undefined || highest <= 2 * lowest) return [];
  const curve: number[] = [];
  for (const [at, frequency] of spectrum.frequencies.entries()) {
    const decibels = spectrum.decibels[at];
    if (frequency < lowest || decibels === undefined || !Number.isFinite(decibels)) continue;
    const place = Math.min(
      points - 1,
      Math.floor((points * Math.log(frequency / lowest)) / Math.log(highest / lowest)),
    );
    const before = curve[place];
    curve[place] = Math.round(10 * Math.max(before ?? Number.NEGATIVE_INFINITY, decibels)) / 10;
  }
  // At low frequencies points lie closer than bins do.
  for (let place = 1; place < curve.length; place += 1) curve[place] ??= curve[place - 1] ?? 0;
  return curve.filter((one) => one !== undefined);
}
