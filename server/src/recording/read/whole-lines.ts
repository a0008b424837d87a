import { type ReadingPace, type RecordingSource, UnreadableRecording } from './source';

/** Bytes of a file that end with a line, from `from` to the one before `to`. */
export interface WholeLines {
  readonly bytes: Uint8Array;
  readonly from: number;
  readonly to: number;
  /** Whether the last of the lines has no end, as the last one of a file may. */
  readonly isCut: boolean;
}

/** Bytes that are worked on in one go: a millisecond or two. */
const slice = 1 << 17;
/** No line of a table is longer, be there a thousand columns. */
const longestLine = 1 << 20;

export const lineFeed = 10;
export const carriageReturn = 13;

/** The lines of a file in pieces, none of which is cut but the file's last one. Others get their turn between them. */
export async function* wholeLines(
  source: RecordingSource,
  { turn }: ReadingPace,
): AsyncGenerator<WholeLines, void> {
  let rest: Uint8Array = new Uint8Array(0);
  let read = 0;
  let isFirst = true;
  let withReturns = false;
  for await (const chunk of opened(source)) {
    for (let start = 0; start < chunk.length; start += slice) {
      let piece = chunk.subarray(start, start + slice);
      if (isFirst) {
        refuseUnlessText(piece);
        withReturns = piece.includes(carriageReturn) && !piece.includes(lineFeed);
        piece = withoutMarkOfUtf8(piece);
        isFirst = false;
      }
      if (withReturns) piece = piece.map((byte) => (byte === carriageReturn ? lineFeed : byte));
      const last = piece.lastIndexOf(lineFeed);
      if (last < 0) rest = joined(rest, piece);
      else {
        const first = rest.length === 0 ? 0 : piece.indexOf(lineFeed) + 1;
        if (first > 0) {
          const line = joined(rest, piece.subarray(0, first));
          yield { bytes: line, from: 0, to: line.length, isCut: false };
        }
        if (last >= first) yield { bytes: piece, from: first, to: last + 1, isCut: false };
        rest = piece.slice(last + 1);
      }
      if (rest.length > longestLine)
        throw new UnreadableRecording(
          `A line goes on for more than ${longestLine} characters, so this is no table of rows; export the recording as text with a line for each row.`,
        );
      read += piece.length;
      const pause = turn(read);
      if (pause !== undefined) await pause;
    }
  }
  if (rest.length > 0) yield { bytes: rest, from: 0, to: rest.length, isCut: true };
}

/** So many bytes show how a file is written, and how its lines end. */
const opening = 1 << 14;

/** The bytes of a file, of which the first piece is long enough to judge the file by, however small they come. */
async function* opened(source: RecordingSource): AsyncGenerator<Uint8Array, void> {
  let first: Uint8Array | null = new Uint8Array(0);
  for await (const chunk of source.bytes()) {
    if (first === null) {
      yield chunk;
      continue;
    }
    first = first.length === 0 ? chunk : joined(first, chunk);
    if (first.length < opening) continue;
    yield first;
    first = null;
  }
  if (first !== null) yield first;
}

function joined(first: Uint8Array, second: Uint8Array): Uint8Array {
  const whole = new Uint8Array(first.length + second.length);
  whole.set(first);
  whole.set(second, first.length);
  return whole;
}

function withoutMarkOfUtf8(bytes: Uint8Array): Uint8Array {
  return bytes[0] === 0xef && bytes[1] === 0xbb && bytes[2] === 0xbf ? bytes.subarray(3) : bytes;
}

function refuseUnlessText(bytes: Uint8Array): void {
  const [first, second] = bytes;
  if ((first === 0xff && second === 0xfe) || (first === 0xfe && second === 0xff))
    throw new UnreadableRecording('This file is saved as UTF-16; save it as UTF-8 text.');
  if (bytes.includes(0))
    throw new UnreadableRecording(
      'This file is not a text; the board or its logger can export the recording as columns of text (CSV).',
    );
}
