import type { LinkKept, MeasuredAnswer } from '../report';
import type { FlightRows } from './flight-rows';
import { give, measuredBy, quantile, withheld } from './span';

const fewest = 20;
const inOneGo = 20_000;
/** A frame that comes later than this many usual intervals is lost, or the one before it. */
const late = 1.5;

/** How regularly control frames came: a new one has come where the time since the last falls. */
export function* linkKept(rows: FlightRows): Generator<void, MeasuredAnswer<LinkKept>> {
  const { rate } = rows;
  const frames = rows.channel('frames');
  if (frames === null)
    return withheld(
      'No column says when control frames came.',
      'Log the time since the last control frame, if the board can.',
    );
  const { intervals, longest } = yield* frameIntervals(rows, frames);
  if (intervals.length < fewest)
    return withheld(
      `Only ${intervals.length} frames were seen to come.`,
      'Log at least twice as many rows as frames come.',
    );
  const interval = quantile(intervals, 0.5);
  if (interval * rate < 2)
    return withheld(
      'Frames come about as often as rows: some of them fall between two rows.',
      'Log more rows a second.',
    );
  const gap = intervals.reduce((most, one) => Math.max(most, one), longest);
  const lost = intervals.reduce(
    (sum, one) => sum + (one > late * interval ? Math.round(one / interval) - 1 : 0),
    0,
  );
  const share = (100 * intervals.length) / (intervals.length + lost);
  const row = 1 / rate;
  return measuredBy(
    {
      interval: give(1000 * interval, 1000 * Math.min(row, 0.1 * interval), 'ms'),
      longestGap: { likely: 1000 * gap, low: 1000 * longest, high: 1000 * (gap + row), unit: 'ms' },
      whole: {
        ...give(share, (164.5 * Math.sqrt(lost + 1)) / (intervals.length + lost), '%'),
        high: Math.min(100, share + (164.5 * Math.sqrt(lost + 1)) / (intervals.length + lost)),
      },
    },
    `${intervals.length} frames`,
  );
}

/** The times between frames that came one after the other, and the longest time since one; s. */
function* frameIntervals(
  { stretches, recording: { time } }: FlightRows,
  frames: Float32Array,
): Generator<void, { readonly intervals: readonly number[]; readonly longest: number }> {
  const intervals: number[] = [];
  let longest = 0;
  for (const { from, to } of stretches) {
    let last: number | null = null;
    for (let row = from; row < to; row += 1) {
      if (row % inOneGo === 0) yield;
      const [since, before] = [frames[row] ?? Number.NaN, frames[row - 1] ?? Number.NaN];
      if (Number.isNaN(since)) continue;
      longest = Math.max(longest, since);
      if (row === from || !(since < before)) continue;
      // The frame came so long before this row.
      const came = (time[row] ?? 0) - since;
      if (last !== null) intervals.push(came - last);
      last = came;
    }
  }
  return { intervals, longest };
}
