import type { RecordingFindingWords } from '../catalog/model/recording-columns';
import { shortNumber } from '../units/number-text';
import { inWords } from './find/findings-of';
import { measuredText } from './find/measured-text';
import type { AxisNoise, RecordingFinding, Told } from './report';

/** What grew by less is nothing to look for. Common practice. */
const leastGrowth = 1.25;

/** Rows that come as often but for this share are compared. Ours. */
const sameRate = 0.1;

/** How a craft shook on a flight. */
export interface Shaking {
  readonly name: string;
  /** Rows a second, Hz: shaking is told up to half of it. */
  readonly rate: number;
  readonly noise: Told<readonly Pick<AxisNoise, 'axis' | 'shaking'>[]>;
}

/** What two recordings of a craft show beside each other that a pilot should know: noise that has grown. */
export function changeOf(
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
