import type { RecordingFindingWords } from '../catalog/model/recording-columns';
import { shortNumber } from '../units/number-text';
import { inWords } from './find/findings-of';
import { measuredText } from './find/measured-text';
import type { AxisNoise, MeasuredAnswer, MeasuredSpan, RecordingFinding, RecordingReport } from './report';

/** What grew by less is nothing to look for. Common practice. */
const leastGrowth = 1.25;

/** Rows that come as often but for this share are compared. Ours. */
const sameRate = 0.1;

/** How late an axis was on a flight, and how near to swinging; null where that was not told. */
export interface AxisLate {
  readonly axis: AxisNoise['axis'];
  /** From motor command to gyro, ms. */
  readonly delay: MeasuredSpan | null;
  /** deg */
  readonly phaseMargin: MeasuredSpan | null;
}

/** How a craft shook on a flight, and how late it was. */
export interface Shaking {
  readonly name: string;
  /** Rows a second, Hz: shaking is told up to half of it. */
  readonly rate: number;
  readonly noise: MeasuredAnswer<readonly Pick<AxisNoise, 'axis' | 'shaking'>[]>;
  readonly late?: readonly AxisLate[] | undefined;
}

/** How late the axes were. */
export function lateOf({ responses }: Pick<RecordingReport, 'responses'>): readonly AxisLate[] {
  return (responses.told ?? []).map(({ axis, delay, margins }) => ({
    axis,
    delay: delay.told,
    phaseMargin: margins.told?.phaseMargin ?? null,
  }));
}

/**
 * What two recordings of a craft show beside each other that a pilot should know: noise that has grown, a margin that
 * has shrunk, a delay that has grown.
 */
export function changeOf(
  before: Shaking,
  after: Shaking,
  words: readonly RecordingFindingWords[],
): readonly RecordingFinding[] {
  return [...grownNoise(before, after, words), ...grownLate(before, after, words)];
}

function grownLate(
  before: Shaking,
  after: Shaking,
  words: readonly RecordingFindingWords[],
): readonly RecordingFinding[] {
  return (after.late ?? []).flatMap(({ axis, delay, phaseMargin }) => {
    const was = before.late?.find((one) => one.axis === axis);
    const pair = (one: MeasuredSpan | null | undefined, other: MeasuredSpan | null, isWorse: Worse) =>
      one == null || other === null || !isWorse(one, other)
        ? null
        : { axis, before: measuredText(one), after: measuredText(other), name: before.name };
    const shrunk = pair(was?.phaseMargin, phaseMargin, (one, other) => other.high < one.low);
    const later = pair(was?.delay, delay, (one, other) => other.low > one.high);
    return [
      ...(shrunk === null ? [] : inWords({ id: 'late/margin-shrunk', values: shrunk, proposals: [] }, words)),
      ...(later === null ? [] : inWords({ id: 'late/delay-grown', values: later, proposals: [] }, words)),
    ];
  });
}

type Worse = (one: MeasuredSpan, other: MeasuredSpan) => boolean;

function grownNoise(
  before: Shaking,
  after: Shaking,
  words: readonly RecordingFindingWords[],
): readonly RecordingFinding[] {
  // More rows a second show more of the same shaking.
  if (Math.abs(Math.log(after.rate / before.rate)) > sameRate) return [];
  return (after.noise.told ?? []).flatMap(({ axis, shaking }) => {
    const was = before.noise.told?.find((one) => one.axis === axis)?.shaking;
    if (was === undefined || shaking.low <= was.high || shaking.likely < leastGrowth * was.likely) return [];
    const values = {
      axis,
      before: measuredText(was),
      after: measuredText(shaking),
      name: before.name,
      times: shortNumber(shaking.likely / was.likely, 2),
    };
    return inWords({ id: 'shake/grown', values, proposals: [] }, words);
  });
}
