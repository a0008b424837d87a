import type { RowReader } from './row-reader';
import type { ReadingPace, RecordingSource } from './source';
import { type TableHead, tableHead } from './table-head';
import { lineFeed, wholeLines } from './whole-lines';

/** What became of a file's lines. */
export interface RowTally {
  /** Lines below the headings that were looked at as rows. */
  rows: number;
  /** Rows with more or fewer cells than there are columns, which were left out. */
  odd: number;
  /** The line of the first of those, counted from 1. */
  firstOdd: number;
  /** Whether the last line has no end and was left out. */
  isCut: boolean;
  /** Whether the rest was not read, since as much is held as may be. */
  isFull: boolean;
  bytes: number;
}

export interface RowTaker {
  /** A row is in the reader. False ends the reading. */
  take(): boolean;
  /** The headings stand there once more: another recording begins. */
  begin?(): void;
  /** How many lines to pass over before the next row is read; 0 for none. */
  skip?(): number;
}

const headBytes = 1 << 16;

/** Reads the first lines of a file, and what they tell. */
export async function readHead(source: RecordingSource): Promise<TableHead> {
  const texts: string[] = [];
  let length = 0;
  for await (const { bytes, from, to, isCut } of wholeLines(source, { turn: () => undefined })) {
    if (isCut && texts.length > 0) break;
    texts.push(textOf(bytes.subarray(from, to)));
    length += to - from;
    if (length > headBytes) break;
  }
  return tableHead(texts.join(''));
}

/** Old programs of one country write the degree sign and the Greek letter in its own way. */
function textOf(bytes: Uint8Array): string {
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    return new TextDecoder('windows-1252').decode(bytes);
  }
}

/** Gives each row of a table to `taker`, from the first to the last. */
export async function eachRow(
  source: RecordingSource,
  head: TableHead,
  reader: RowReader,
  pace: ReadingPace,
  taker: RowTaker,
): Promise<RowTally> {
  const tally: RowTally = { rows: 0, odd: 0, firstOdd: 0, isCut: false, isFull: false, bytes: 0 };
  let line = 0;
  let toSkip = head.linesAbove;
  for await (const { bytes, from, to, isCut } of wholeLines(source, pace)) {
    tally.bytes += to - from;
    if (isCut) {
      tally.isCut = line >= head.linesAbove;
      continue;
    }
    let at = from;
    while (at < to) {
      line += 1;
      if (toSkip > 0) {
        toSkip -= 1;
        at = bytes.indexOf(lineFeed, at) + 1;
        continue;
      }
      const start = at;
      const unreadable = reader.unreadable;
      at = reader.read(bytes, at, to);
      if (reader.filled <= 0) continue;
      if (isHeading(bytes, start, at, reader, head)) {
        reader.unreadable = unreadable;
        taker.begin?.();
        continue;
      }
      tally.rows += 1;
      if (reader.filled > head.cells || reader.cells < head.cells) {
        tally.odd += 1;
        if (tally.odd === 1) tally.firstOdd = line;
        continue;
      }
      if (!taker.take()) {
        tally.isFull = true;
        return tally;
      }
      toSkip = taker.skip?.() ?? 0;
    }
  }
  return tally;
}

function isHeading(bytes: Uint8Array, from: number, to: number, reader: RowReader, head: TableHead): boolean {
  if (head.headingLine === null || !Number.isNaN(reader.row[0] ?? Number.NaN)) return false;
  return textOf(bytes.subarray(from, to)).trim() === head.headingLine;
}
