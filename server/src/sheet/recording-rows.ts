import type {
  AxisResponse,
  MeasuredAnswer,
  MeasuredGain,
  MeasuredMargins,
  MeasuredSpan,
  RecordingReport,
} from '../recording/report';
import { measuredNumber, shortNumber, withUnit } from '../units/number-text';
import type { RecordingQuestion } from './compare/recording-questions';
import type { AxisModel, EstimateBeside } from './recording-model';

/** A quantity of the axes as it stands on the page, on the command line and in a comparison. */
export interface AxisRow {
  readonly question: Extract<RecordingQuestion, 'follow' | 'late' | 'gains'>;
  readonly name: string;
  /** Which way is better; null: neither is. */
  readonly better: 'less' | 'more' | null;
  readonly cells: readonly AxisCell[];
}

export interface AxisCell {
  readonly axis: AxisResponse['axis'];
  /** Null where it is told otherwise, or there is none. */
  readonly value: MeasuredAnswer<MeasuredSpan> | null;
  /** What the script says of it, in words. */
  readonly beside: string | null;
  /** What it lets expect, in numbers; null where it says a gain, or nothing. */
  readonly estimate: EstimateBeside | null;
}

/** A gain that the script sets. */
export interface WrittenGain {
  readonly axis: MeasuredGain['axis'];
  readonly term: MeasuredGain['term'];
  /** "0.45 %/(deg/s)" */
  readonly text: string;
}

type PartOfResponse = (response: AxisResponse) => MeasuredAnswer<MeasuredSpan> | null;

/** How the axes follow, beside what the script lets expect. */
export function followRows(axes: readonly AxisResponse[], models: readonly AxisModel[]): readonly AxisRow[] {
  const row = rowsOf('follow', axes, models);
  return [
    row('Response over frequency', null, ({ curve }) => (curve.told === null ? curve : null)),
    row('Follows up to (−3 dB)', 'more', ({ bandwidth }) => bandwidth, 'bandwidth'),
    row('Most that comes at any frequency', null, ({ peak }) => peak, 'peak'),
    row('Half of a sudden call comes after', 'less', ({ step }) => partOf(step, ({ half }) => half), 'half'),
    row('End of a sudden call', null, ({ step }) => partOf(step, ({ endGain }) => endGain)),
  ];
}

/** How late they are, and what is left before they swing, beside what the script lets expect. */
export function lateRows(axes: readonly AxisResponse[], models: readonly AxisModel[]): readonly AxisRow[] {
  const row = rowsOf('late', axes, models);
  const margin =
    (part: (margins: MeasuredMargins) => MeasuredSpan): PartOfResponse =>
    ({ margins }) =>
      partOf(margins, part);
  return [
    row('Delay from motor command to gyro', 'less', ({ delay }) => delay, 'delay'),
    row('Time constant of motors and propellers', 'less', ({ lag }) => lag, 'lag'),
    row('Phase delay from sticks to gyro', 'less', ({ phaseDelay }) => phaseDelay),
    row(
      'Crossover',
      null,
      margin(({ crossover }) => crossover),
      'crossover',
    ),
    row(
      'Phase margin',
      'more',
      margin(({ phaseMargin }) => phaseMargin),
      'phaseMargin',
    ),
    row('Gain margin', 'more', gainMarginOf, 'gainMargin'),
    row(
      'Most that a disturbance grows by',
      'less',
      margin(({ sensitivityPeak }) => sensitivityPeak),
    ),
  ];
}

/** Makes rows of a question, each with the estimate of its name beside what was measured. */
function rowsOf(question: AxisRow['question'], axes: readonly AxisResponse[], models: readonly AxisModel[]) {
  return (
    name: string,
    better: AxisRow['better'],
    of: PartOfResponse,
    estimate?: keyof AxisModel['estimates'],
  ): AxisRow => ({
    question,
    name,
    better,
    cells: axes.map((one) => {
      const model = models.find(({ axis }) => axis === one.axis);
      const expected = estimate === undefined ? null : (model?.estimates[estimate] ?? null);
      return { axis: one.axis, value: of(one), beside: besideText(expected), estimate: expected };
    }),
  });
}

const terms: readonly (readonly [term: MeasuredGain['term'], title: string])[] = [
  ['proportional', 'Proportional'],
  ['integral', 'Integral'],
  ['derivative', 'Derivative'],
];

/** What the board's gains come to, beside those that the script sets. */
export function gainRows(
  gains: readonly MeasuredGain[],
  written: readonly WrittenGain[],
): readonly AxisRow[] {
  const axes = [...new Set(gains.map(({ axis }) => axis))];
  return terms.map(([term, name]) => ({
    question: 'gains',
    name,
    better: null,
    cells: axes.map((axis) => {
      const isIt = (one: Pick<MeasuredGain, 'axis' | 'term'>) => one.axis === axis && one.term === term;
      const text = written.find(isIt)?.text;
      return {
        axis,
        value: gains.find(isIt)?.gain ?? null,
        beside: text === undefined ? null : `script: ${text}`,
        estimate: null,
      };
    }),
  }));
}

/** What a script lets expect, and what it sets, of what is told axis by axis. */
export interface BesideRecording {
  readonly models: readonly AxisModel[];
  readonly gains: readonly WrittenGain[];
}

export const noScriptBeside: BesideRecording = { models: [], gains: [] };

/** All of a recording that is told axis by axis, beside what the script says of it. */
export function axisRows({ responses, gains }: RecordingReport, beside: BesideRecording): readonly AxisRow[] {
  const axes = responses.told ?? [];
  return [
    ...followRows(axes, beside.models),
    ...lateRows(axes, beside.models),
    ...gainRows(gains.told ?? [], beside.gains),
  ];
}

function partOf<T>(answer: MeasuredAnswer<T>, part: (told: T) => MeasuredSpan): MeasuredAnswer<MeasuredSpan> {
  return 'reason' in answer ? answer : { told: part(answer.told), basis: answer.basis };
}

function gainMarginOf({ margins }: AxisResponse): MeasuredAnswer<MeasuredSpan> {
  if ('reason' in margins) return margins;
  const { gainMargin } = margins.told;
  if (gainMargin !== null) return { told: gainMargin, basis: margins.basis };
  return {
    told: null,
    reason: 'It lies above the frequencies that were flown, or is known too badly.',
    advice: 'Quicker, small movements of the sticks show it.',
  };
}

/** "script: 59 deg in the hover; 58.6 deg (38.6 to 75.7) at the worst place" */
function besideText(estimate: EstimateBeside | null): string | null {
  if (estimate === null) return null;
  const { inHover, figure, unit } = estimate;
  const hover = inHover === null ? null : `${withUnit(shortNumber(inHover), unit)} in the hover`;
  if (figure === null) return hover === null ? null : `script: ${hover}`;
  const number = (value: number) => measuredNumber(value, figure);
  const span = `(${number(figure.low)} to ${number(figure.high)})`;
  // The same at both places is said once.
  if (inHover !== null && Math.abs(inHover - figure.likely) < 1e-3 * Math.abs(inHover))
    return `script: ${hover} ${span}`;
  const worst = `${withUnit(number(figure.likely), unit)} ${span} at the worst place`;
  return `script: ${hover === null ? worst : `${hover}; ${worst}`}`;
}
