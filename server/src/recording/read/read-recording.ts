import { shortNumber } from '../../units/number-text';
import type { Channel } from '../channel';
import type { Recording } from '../recording';
import { eachRow, type RowTally } from './each-row';
import { flightsOf } from './flights';
import { type GrowingColumn, growing32, growing64 } from './growing-column';
import { type Paced, runPaced } from './paced';
import { RowReader } from './row-reader';
import { type ReadingPace, type RecordingSource, UnreadableRecording } from './source';
import { timeRemarks } from './stretches';
import type { TableColumn, TableHead } from './table-head';
import { type Timeline, timelineOf } from './timeline';

/** A column that is to be read: `(number − zero) × factor` is what the channel keeps. */
export interface ChannelColumn {
  readonly column: TableColumn;
  readonly channel: Channel;
  readonly zero: number;
  readonly factor: number;
}

/** What a file's clock is: a column of counts, perhaps with another of parts of them, or rows at an even pace. */
export type TimeColumn =
  | {
      readonly column: TableColumn;
      /** How long a count is, s. */
      readonly seconds: number;
      /** Parts of a count that stand in a column of their own, such as nanoseconds beside seconds. */
      readonly parts: { readonly column: TableColumn; readonly seconds: number } | null;
    }
  | { readonly column: null; readonly rate: number };

export interface WantedColumns {
  readonly time: TimeColumn;
  readonly channels: readonly ChannelColumn[];
  /** Sentences about columns that are not read, the weightiest first. */
  readonly leftOut: readonly string[];
}

/** Cells that are held at most: a hundred megabytes and some, 20 minutes at 1 kHz of 28 columns. */
const mostCells = 34_000_000;
/** With fewer rows nothing can be told. */
const fewestRows = 2;

/** Reads the wanted columns of a file, from its first row to its last. */
export async function readRecording(
  source: RecordingSource,
  head: TableHead,
  wanted: WantedColumns,
  pace: ReadingPace,
): Promise<Recording> {
  const held = new HeldRows(head, wanted);
  const tally = await eachRow(source, head, held.reader, pace, held);
  refuseFewRows(tally);
  return held.recording(source, tally, () => pace.turn(tally.bytes));
}

class HeldRows {
  readonly reader: RowReader;
  private readonly stamps = growing64();
  private readonly values: readonly GrowingColumn<Float32Array>[];
  private readonly begins: number[] = [];
  /** Where the channels begin in a row of the reader, behind the columns of time. */
  private readonly first: number;
  private readonly mostRows: number;
  private rows = 0;
  /** Rows that hold nothing but zeros, as loggers write before their first measurement; their stamps are NaN. */
  private zeros = 0;
  /** Whether a row of zeros can't be measured: no pack gives nothing, and pulses are never that short. */
  private readonly hasNoZeros: boolean;

  constructor(
    private readonly head: TableHead,
    private readonly wanted: WantedColumns,
  ) {
    const { time, channels } = wanted;
    const clock =
      time.column === null ? [] : [{ ...time.column, isStamp: true }, ...partsOf(time.parts?.column)];
    this.first = clock.length;
    this.reader = new RowReader(head.dialect, [
      ...clock,
      ...channels.map(({ column }) => ({ ...column, isStamp: false })),
    ]);
    this.values = channels.map(growing32);
    this.hasNoZeros = channels.some(({ channel, zero }) => channel === 'voltage' || zero !== 0);
    this.mostRows = Math.floor(mostCells / (channels.length + 2));
  }

  take(): boolean {
    const { row } = this.reader;
    const { channels } = this.wanted;
    if (this.rows >= this.mostRows) return false;
    const { first, values } = this;
    let isZero = values.length > 1 && (this.hasNoZeros || this.zeros === this.rows);
    for (let at = 0; at < values.length; at += 1) {
      const value = row[first + at] as number;
      const { zero, factor } = channels[at] as ChannelColumn;
      if (isZero && value !== 0) isZero = false;
      (values[at] as GrowingColumn<Float32Array>).push((value - zero) * factor);
    }
    if (isZero) this.zeros += 1;
    this.stamps.push(isZero ? Number.NaN : this.stamp());
    this.rows += 1;
    return true;
  }

  private stamp(): number {
    const { time } = this.wanted;
    const { row } = this.reader;
    if (time.column === null) return this.rows;
    const whole = row[0] as number;
    return time.parts === null ? whole : whole + ((row[1] as number) * time.parts.seconds) / time.seconds;
  }

  begin(): void {
    this.begins.push(this.rows);
  }

  private *channels(line: Timeline): Paced<ReadonlyMap<Channel, Float32Array>> {
    const found = new Map<Channel, Float32Array>();
    for (const [at, { channel }] of this.wanted.channels.entries()) {
      const values = this.values[at]?.whole();
      if (values !== undefined) found.set(channel, packed(values, line));
      yield;
    }
    return found;
  }

  /** All that was read, as a recording; `turn` lets others in between its pieces. */
  async recording(
    source: RecordingSource,
    tally: RowTally,
    turn: () => Promise<void> | undefined,
  ): Promise<Recording> {
    const { time } = this.wanted;
    const { zeros } = this;
    if (zeros === this.rows)
      throw new UnreadableRecording(
        'Every row holds nothing but zeros; look whether the board logs what its sensors say.',
      );
    const counts = this.stamps.whole();
    const line = await runPaced(
      timelineOf({
        counts,
        seconds: time.column === null ? 1 / time.rate : time.seconds,
        begins: this.begins,
        alreadyOut: zeros,
      }),
      turn,
    );
    if (!(line.step > 0)) throw new UnreadableRecording(noTime(this.wanted));
    const byChannel = await runPaced(this.channels(line), turn);
    const flights = await runPaced(flightsOf(line.time, line.segments, byChannel), turn);
    return {
      name: source.name,
      isSimulated: this.head.isSimulated,
      time: line.time,
      channels: byChannel,
      flights,
      leftOut: [
        ...cutRemarks(source, tally),
        ...this.head.remarks,
        ...this.wanted.leftOut,
        ...(zeros > 0 ? [zeroRemark(zeros)] : []),
        ...line.remarks,
        ...oddRemarks(tally, this.reader.unreadable),
        ...timeRemarks(line.time, flights),
      ],
    };
  }
}

/** The values of the rows that are kept, in the same memory. */
function packed(values: Float32Array, { kept, time }: Timeline): Float32Array {
  if (kept === null) return values;
  const from = kept.indexOf(1);
  // Mostly it is the first rows alone that are left out.
  if (values.length - from === time.length) return values.subarray(from);
  let to = 0;
  for (let row = from; row < values.length; row += 1) {
    if (kept[row] === 0) continue;
    values[to] = values[row] as number;
    to += 1;
  }
  return values.subarray(0, to);
}

function partsOf(column: TableColumn | undefined) {
  return column === undefined ? [] : [{ ...column, isStamp: false }];
}

function cutRemarks({ size }: RecordingSource, { isCut, isFull, rows, bytes }: RowTally): readonly string[] {
  return [
    ...(isFull
      ? [
          `After ${shortNumber(rows)} rows${size === null ? '' : `, ${Math.round((100 * bytes) / size)} % of the file,`} nothing more was read, for more can’t be held; cut the recording into flights.`,
        ]
      : []),
    ...(isCut ? ['The last line has no end, so that it may be cut off: left out.'] : []),
  ];
}

function zeroRemark(zeros: number): string {
  return `${zeros === 1 ? 'A row holds' : `${zeros} rows hold`} nothing but zeros, as loggers write before their first measurement: left out.`;
}

function oddRemarks({ odd, firstOdd }: RowTally, unreadable: number): readonly string[] {
  return [
    ...(odd > 0
      ? [
          `${odd === 1 ? 'A row has' : `${odd} rows have`} more or fewer cells than there are columns, ${odd === 1 ? '' : 'the first of them '}in line ${firstOdd}: left out.`,
        ]
      : []),
    ...(unreadable > 0
      ? [
          `${unreadable === 1 ? 'A cell holds' : `${unreadable} cells hold`} no number where one was expected: taken as missing.`,
        ]
      : []),
  ];
}

/** @throws {UnreadableRecording} where nothing can be told, for there are no rows, or one */
export function refuseFewRows(tally: RowTally): void {
  if (tally.rows - tally.odd < fewestRows) throw new UnreadableRecording(tooFewRows(tally));
}

function tooFewRows({ rows, odd, isCut }: RowTally): string {
  if (rows === 0)
    return `The file holds headings and no ${isCut ? 'whole row' : 'rows'}; record again, and look whether the log was full.`;
  if (odd > 0)
    return `Only ${rows - odd} of ${rows} rows have as many cells as there are columns; export the recording once more.`;
  return 'The file holds one row, and one row tells nothing; record a flight of some seconds.';
}

function noTime({ time }: WantedColumns): string {
  const name = time.column === null ? '' : ` “${time.column.heading}”`;
  return `The time${name} does not rise from row to row; say which column holds it.`;
}
