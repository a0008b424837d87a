import type {
  AxisNoise,
  MeasuredAnswer,
  MeasuredSpan,
  MotorWork,
  Peak,
  RecordingReport,
} from '../../recording/report';
import { axisRows, noScriptBeside } from '../recording-rows';
import type { RecordingQuestion } from './recording-questions';

/** The same quantity of two recordings. */
export interface RecordingChange {
  readonly question: RecordingQuestion;
  readonly title: string;
  /** Null where it is not there, or was not told. */
  readonly before: MeasuredSpan | null;
  readonly after: MeasuredSpan | null;
  /** Null where the spans overlap, so that nobody can say, or where it depends on what the pilot wants. */
  readonly turn: 'better' | 'worse' | null;
}

/** Which way is better; null: neither is. */
type Better = 'less' | 'more' | 'nearer-zero' | null;

/** What two recordings of a craft tell, side by side: all that at least one of them tells. */
export function recordingChanges(
  before: RecordingReport,
  after: RecordingReport,
): readonly RecordingChange[] {
  const pair = <T>(of: (report: RecordingReport) => MeasuredAnswer<T>) =>
    [of(before).told, of(after).told] as const;
  return [
    ...noiseChanges(...pair(({ noise }) => noise)),
    ...axisChanges(before, after),
    ...motorChanges(...pair(({ motors }) => motors)),
    ...packChanges(before, after),
    ...hoverChanges(before, after),
    ...linkChanges(before, after),
  ].filter((change) => change.before !== null || change.after !== null);
}

function noiseChanges(
  before: readonly AxisNoise[] | null,
  after: readonly AxisNoise[] | null,
): readonly RecordingChange[] {
  const axes = [...new Set([...(before ?? []), ...(after ?? [])].map(({ axis }) => axis))];
  return axes.flatMap((axis) => {
    const [was, is] = [before, after].map((all) => all?.find((one) => one.axis === axis));
    return [
      changed('shake', `Shaking about ${axis}`, was?.shaking, is?.shaking, 'less'),
      ...peakChanges(axis, was?.peaks ?? [], is?.peaks ?? []),
    ];
  });
}

/** A tone is the same one where its spans overlap: of the motors' turns, else of the frequency. */
function peakChanges(
  axis: string,
  before: readonly Peak[],
  after: readonly Peak[],
): readonly RecordingChange[] {
  const left = [...after];
  const pairs = before.map((was) => {
    const at = left.findIndex((is) => isSameTone(was, is));
    return [was, at < 0 ? undefined : left.splice(at, 1)[0]] as const;
  });
  const gained = left.map((is) => [undefined, is] as const);
  return [...pairs, ...gained].flatMap(([was, is]) => {
    const title = `Tone about ${axis} ${toneWords(is ?? was)}`;
    return [
      changed('shake', `${title}, above the floor`, was?.aboveFloor, is?.aboveFloor, 'less'),
      changed('shake', `${title}, what the filters leave`, exact(was?.left), exact(is?.left), 'less'),
    ];
  });
}

function isSameTone(one: Peak, other: Peak): boolean {
  if (one.order !== null && other.order !== null) return overlap(one.order, other.order);
  return overlap(one.frequency, other.frequency);
}

function toneWords(peak: Peak | undefined): string {
  if (peak === undefined) return '';
  const { order, frequency } = peak;
  return order === null
    ? `at ${Math.round(frequency.likely)} Hz`
    : `${short(order.likely)} times a motor turn`;
}

function short(value: number): string {
  return String(Number(value.toPrecision(3)));
}

/** What is computed, not measured, has no span. */
function exact(decibels: number | null | undefined): MeasuredSpan | null {
  return decibels == null ? null : { likely: decibels, low: decibels, high: decibels, unit: 'dB' };
}

/** How it follows, how late it is, and the board's gains, axis by axis. */
function axisChanges(before: RecordingReport, after: RecordingReport): readonly RecordingChange[] {
  const [was, is] = [cellsOf(before), cellsOf(after)];
  return [...new Map([...was, ...is])].map(([title, { question, better }]) =>
    changed(question, title, was.get(title)?.measured, is.get(title)?.measured, better),
  );
}

function cellsOf(report: RecordingReport) {
  return new Map(
    axisRows(report, noScriptBeside).flatMap(({ question, name, better, cells }) =>
      cells.map(
        ({ axis, value }) =>
          [`${name}, ${axis}`, { question, better, measured: value?.told ?? null }] as const,
      ),
    ),
  );
}

function motorChanges(
  before: readonly MotorWork[] | null,
  after: readonly MotorWork[] | null,
): readonly RecordingChange[] {
  const motors = [...new Set([...(before ?? []), ...(after ?? [])].map(({ motor }) => motor))];
  return motors.flatMap((motor) => {
    const [was, is] = [before, after].map((all) => all?.find((one) => one.motor === motor));
    return [
      changed('motors', `Motor ${motor} works harder by`, was?.harder, is?.harder, 'nearer-zero'),
      changed('motors', `Motor ${motor}, time constant`, was?.lag.told, is?.lag.told, 'less'),
    ];
  });
}

function packChanges({ pack: before }: RecordingReport, { pack: after }: RecordingReport) {
  const [was, is] = [before.told, after.told];
  return [
    changed('pack', 'Open voltage', was?.openVoltage.told, is?.openVoltage.told, null),
    changed(
      'pack',
      'Resistance at once',
      ...valuesOf(was?.resistanceAtOneSecond, is?.resistanceAtOneSecond),
      'less',
    ),
    changed(
      'pack',
      'Resistance after ten seconds',
      ...valuesOf(was?.resistanceAtTenSeconds, is?.resistanceAtTenSeconds),
      'less',
    ),
    changed('pack', 'Charge used', was?.usedCharge.told, is?.usedCharge.told, null),
    changed('pack', 'Lowest voltage', was?.lowestVoltage, is?.lowestVoltage, 'more'),
  ];
}

function valuesOf<T>(was: MeasuredAnswer<T> | undefined, is: MeasuredAnswer<T> | undefined) {
  return [was?.told, is?.told] as const;
}

function hoverChanges({ hover: before }: RecordingReport, { hover: after }: RecordingReport) {
  const [was, is] = [before.told, after.told];
  return [
    changed('hover', 'Hover throttle', was?.throttle, is?.throttle, null),
    changed('hover', 'Hover current', was?.current, is?.current, 'less'),
  ];
}

function linkChanges({ link: before }: RecordingReport, { link: after }: RecordingReport) {
  const [was, is] = [before.told, after.told];
  return [
    changed('link', 'Time between control frames', was?.interval, is?.interval, 'less'),
    changed('link', 'Longest gap', was?.longestGap, is?.longestGap, 'less'),
    changed('link', 'Frames that came', was?.whole, is?.whole, 'more'),
  ];
}

function changed(
  question: RecordingQuestion,
  title: string,
  was: MeasuredSpan | null | undefined,
  is: MeasuredSpan | null | undefined,
  better: Better,
): RecordingChange {
  const [before, after] = [was ?? null, is ?? null];
  return { question, title, before, after, turn: turnOf(before, after, better) };
}

function turnOf(
  before: MeasuredSpan | null,
  after: MeasuredSpan | null,
  better: Better,
): RecordingChange['turn'] {
  if (before === null || after === null || better === null || before.unit !== after.unit) return null;
  if (overlap(before, after) || isAlmost(before, after)) return null;
  const size = (span: MeasuredSpan) => (better === 'nearer-zero' ? Math.abs(span.likely) : span.likely);
  return size(after) > size(before) === (better === 'more') ? 'better' : 'worse';
}

/** dB by which what is computed must differ for anybody to hear of it. Ours. */
const leastDecibels = 0.5;

function isAlmost(one: MeasuredSpan, other: MeasuredSpan): boolean {
  return one.unit === 'dB' && Math.abs(one.likely - other.likely) < leastDecibels;
}

function overlap(one: MeasuredSpan, other: MeasuredSpan): boolean {
  return one.low <= other.high && other.low <= one.high;
}
