import { shortNumber } from '../../units/number-text';
import { endsPiece, type Paced } from './paced';

/** Rows that belong together in time. */
export interface TimeSegment {
  readonly from: number;
  readonly to: number;
}

export interface Timeline {
  /** Seconds since the first row, of the rows that are kept. */
  readonly time: Float64Array;
  /** Of each row that was read, whether it is kept; null where all are. */
  readonly kept: Uint8Array | null;
  readonly segments: readonly TimeSegment[];
  /** The usual time from row to row, s. */
  readonly step: number;
  /** Sentences about rows that were left out and stamps that were mended. */
  readonly remarks: readonly string[];
}

/** What the clock of a file counted. */
export interface Stamps {
  /** One for each row, since any; NaN where a cell said none. What ran over is made to go on in place. */
  readonly counts: Float64Array;
  /** How long a count is. */
  readonly seconds: number;
  /** Rows before which the headings stood once more. */
  readonly begins: readonly number[];
  /** Rows at the beginning that were left out before, for another reason; their counts are NaN. */
  readonly alreadyOut: number;
}

/** Rows that lie further apart belong to another flight, s. */
const anotherFlight = 5;
/** Rows in this many steps are still in their stride when a clock runs over. */
const inStride = 5;
/** Of a clock that is coarser than the rows come, at least so many stamps stand twice. */
const coarse = 0.02;
/** Counts at which clocks run over, also of those that write a thousandth or a millionth of them. */
const overruns = [16, 24, 31, 32].flatMap((bits) => [1, 1e-3, 1e-6].map((scale) => 2 ** bits * scale));

/**
 * Makes a time that never falls within a segment of what a clock counted: a clock that ran over goes on, rows out of
 * order are left out, and where it began anew or rested for long another segment begins.
 */
export function* timelineOf(stamps: Stamps): Paced<Timeline> {
  const { counts, seconds } = stamps;
  const kept = new Uint8Array(counts.length).fill(1);
  const usual = usualStep(counts);
  const mended = { untimed: -stamps.alreadyOut, backwards: 0, overruns: 0, same: 0 };
  const starts: number[] = [];
  const begins = new Set(stamps.begins);
  let [last, ahead, isAnew] = [Number.NaN, 0, false];
  for (let row = 0; row < counts.length; row += 1) {
    if (endsPiece(row)) yield;
    const count = counts[row] as number;
    isAnew ||= begins.has(row);
    if (Number.isNaN(count)) {
      kept[row] = 0;
      mended.untimed += 1;
      continue;
    }
    let now = count + ahead;
    if (isAnew) [now, ahead, last, isAnew] = [count, 0, Number.NaN, false];
    if (now < last) {
      const overrun = overruns.find((one) => now + one > last && now + one - last <= inStride * usual);
      if (overrun !== undefined) {
        ahead += overrun;
        now += overrun;
        mended.overruns += 1;
      } else if (beginsAnew(counts, row, last - now, usual, seconds)) {
        [now, ahead, last] = [count, 0, Number.NaN];
      } else {
        kept[row] = 0;
        mended.backwards += 1;
        continue;
      }
    } else if (isSpike(counts, row, now - last, usual)) {
      kept[row] = 0;
      mended.backwards += 1;
      continue;
    }
    if (now === last) mended.same += 1;
    if (Number.isNaN(last) || (now - last) * seconds > anotherFlight) starts.push(row);
    counts[row] = now;
    last = now;
  }
  return yield* laidOut(stamps, kept, starts, usual, mended);
}

/** The median step forward of some thousand neighbours. */
function usualStep(counts: Float64Array): number {
  const every = Math.max(1, Math.floor(counts.length / 5000));
  const steps: number[] = [];
  for (let row = every; row < counts.length; row += every) {
    const step = (counts[row] as number) - (counts[row - 1] as number);
    if (step > 0) steps.push(step);
  }
  return median(steps);
}

export function median(numbers: readonly number[]): number {
  const sorted = [...numbers].sort((one, other) => one - other);
  return sorted[Math.floor(sorted.length / 2)] ?? 0;
}

/** Far back, and in its stride from there on: a clock that was started once more. */
function beginsAnew(
  counts: Float64Array,
  row: number,
  fall: number,
  usual: number,
  seconds: number,
): boolean {
  const next = (counts[row + 1] ?? Number.NaN) - (counts[row] as number);
  const isFar = fall * seconds > 1 || fall > 100 * usual;
  return isFar && next >= 0 && next <= inStride * usual;
}

/** A stamp far ahead between two that follow each other. */
function isSpike(counts: Float64Array, row: number, step: number, usual: number): boolean {
  if (!(step > inStride * usual)) return false;
  const last = (counts[row] as number) - step;
  const next = counts[row + 1] ?? Number.NaN;
  return next > last && next - last <= inStride * usual && next < (counts[row] as number);
}

interface MendedTimes {
  readonly untimed: number;
  readonly backwards: number;
  readonly overruns: number;
  readonly same: number;
}

function* laidOut(
  { counts, seconds, alreadyOut }: Stamps,
  kept: Uint8Array,
  starts: readonly number[],
  usual: number,
  mended: MendedTimes,
): Paced<Timeline> {
  const rows = counts.length - alreadyOut - mended.untimed - mended.backwards;
  const isCoarse = mended.same > coarse * rows;
  const dropsSame = mended.same > 0 && !isCoarse;
  const time = new Float64Array(rows);
  const froms: number[] = [];
  let [at, begin, first, last] = [0, 0, Number.NaN, Number.NaN];
  for (let row = 0; row < counts.length; row += 1) {
    if (endsPiece(row)) yield;
    if (kept[row] === 0) continue;
    const isStart = starts[begin] === row;
    if (isStart) begin += 1;
    const count = counts[row] as number;
    // A clock that was started once more counts from there.
    if (Number.isNaN(first) || (isStart && count < last)) first = count;
    if (dropsSame && !isStart && count === last) {
      kept[row] = 0;
      continue;
    }
    if (isStart) froms.push(at);
    time[at] = (count - first) * seconds;
    last = count;
    at += 1;
  }
  const whole = time.subarray(0, at);
  const segments = froms.map((from, index) => ({ from, to: froms[index + 1] ?? at }));
  if (isCoarse) for (const segment of segments) yield* spread(whole, segment);
  const isWhole = rows === counts.length && !dropsSame;
  const step = isCoarse ? spreadStep(whole, segments) : usual * seconds;
  return { time: whole, kept: isWhole ? null : kept, segments, step, remarks: remarksOf(mended, isCoarse) };
}

/** Rows with one stamp are spread evenly up to the next stamp. */
function* spread(time: Float64Array, { from, to }: TimeSegment): Paced<void> {
  const mean = ((time[to - 1] as number) - (time[from] as number)) / Math.max(1, to - 1 - from);
  let told = 0;
  for (let start = from; start < to; ) {
    told += 1;
    if (endsPiece(told)) yield;
    let end = start + 1;
    while (end < to && time[end] === time[start]) end += 1;
    const room = end < to ? (time[end] as number) - (time[start] as number) : mean * (end - start);
    const step = Math.min(room / (end - start), end < to ? 2 * mean : mean);
    for (let row = start + 1; row < end; row += 1) time[row] = (time[start] as number) + (row - start) * step;
    start = end;
  }
}

function spreadStep(time: Float64Array, segments: readonly TimeSegment[]): number {
  const [longest] = [...segments].sort((one, other) => other.to - other.from - (one.to - one.from));
  if (longest === undefined) return 0;
  const { from, to } = longest;
  return ((time[to - 1] as number) - (time[from] as number)) / Math.max(1, to - 1 - from);
}

function remarksOf(
  { untimed, backwards, overruns: over, same }: MendedTimes,
  isCoarse: boolean,
): readonly string[] {
  const rows = (count: number) => (count === 1 ? 'A row' : `${shortNumber(count)} rows`);
  return [
    ...(untimed > 0 ? [`${rows(untimed)} without a time: left out.`] : []),
    ...(backwards > 0 ? [`${rows(backwards)} whose time runs backwards or leaps: left out.`] : []),
    ...(same > 0 && !isCoarse ? [`${rows(same)} with the time of the row before: left out.`] : []),
    ...(isCoarse
      ? ['The clock counts coarser than rows come; rows with one stamp were spread evenly up to the next.']
      : []),
    ...(over > 0
      ? [`The clock ran over ${over === 1 ? 'once' : `${over} times`} and was taken to go on.`]
      : []),
  ];
}
