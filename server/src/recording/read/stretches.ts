import { shortNumber } from '../../units/number-text';
import type { RecordedFlight, RowStretch } from '../recording';
import { endsPiece, type Paced } from './paced';
import { median, type TimeSegment } from './timeline';

/** Steps longer than this many usual ones are a gap, if stamps don't scatter as widely. */
const gap = 1.5;
/** Of a normal distribution the median distance from the median is 0.6745 deviations (NIST/SEMATECH handbook, 1.3.5.6). */
const deviationsOfMedian = 0.6745;
/** Nearly no step of a scatter lies further off, in deviations. */
const farOff = 8;

/** The parts of these rows that lie between gaps. A row alone is none. */
export function* stretchesOf(time: Float64Array, { from, to }: TimeSegment): Paced<readonly RowStretch[]> {
  const { usual, scatter } = rowSteps(time, { from, to });
  const most = Math.max(gap * usual, usual + farOff * scatter);
  const stretches: RowStretch[] = [];
  let start = from;
  for (let row = from + 1; row <= to; row += 1) {
    if (endsPiece(row)) yield;
    if (row < to && (time[row] as number) - (time[row - 1] as number) <= most) continue;
    const seconds = (time[row - 1] as number) - (time[start] as number);
    if (seconds > 0) stretches.push({ from: start, to: row, rate: (row - 1 - start) / seconds });
    start = row;
  }
  return stretches;
}

/** The usual step of these rows, and how widely steps scatter about it, s. */
function rowSteps(
  time: Float64Array,
  { from, to }: TimeSegment,
): { readonly usual: number; readonly scatter: number } {
  const every = Math.max(1, Math.floor((to - from) / 5000));
  const steps: number[] = [];
  for (let row = from + every; row < to; row += every)
    steps.push((time[row] as number) - (time[row - 1] as number));
  const usual = median(steps);
  const scatter = median(steps.map((step) => Math.abs(step - usual))) / deviationsOfMedian;
  return { usual, scatter };
}

/** What is missing between the stretches. How evenly rows came is told of each flight. */
export function timeRemarks(time: Float64Array, flights: readonly RecordedFlight[]): readonly string[] {
  const gaps = flights.flatMap(({ stretches }) =>
    stretches
      .slice(1)
      .map(({ from }, at) => (time[from] as number) - (time[(stretches[at]?.to ?? 1) - 1] as number)),
  );
  const longest = gaps.reduce((most, one) => Math.max(most, one), 0);
  const all = gaps.reduce((sum, one) => sum + one, 0);
  return [
    ...(gaps.length === 0
      ? []
      : [
          `${gaps.length === 1 ? 'A gap' : `${gaps.length} gaps`} in the rows, together ${shortNumber(all)} s, the longest ${shortNumber(longest)} s: nothing is told across them.`,
        ]),
  ];
}
