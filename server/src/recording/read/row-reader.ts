import { NumberReader } from './number-reader';
import type { Dialect } from './split-cells';
import type { TableColumn } from './table-head';
import { carriageReturn, lineFeed } from './whole-lines';

/** A column that is read. */
export interface ReadColumn extends Pick<TableColumn, 'cell' | 'part'> {
  /** A stamp keeps all its digits: it is counted from the whole number of the first one. */
  readonly isStamp: boolean;
}

const [tab, blank, quote, hash, openRound, closeRound, comma, semicolon] = [9, 32, 34, 35, 40, 41, 44, 59];
const [openSquare, closeSquare] = [91, 93];
const unwanted = -1;
const vector = -2;

/**
 * Reads rows out of bytes. It makes no text of any cell: that is what general readers of CSV spend their time on, and
 * the reason why none is used here (`test/bench/recording.ts` measures both).
 */
export class RowReader {
  /** The numbers of the row that was read last, NaN where the cell says none. */
  readonly row: Float64Array;
  /** Cells of that row up to the last that is not empty; 0 for a line without any, −1 for a comment. */
  filled = 0;
  /** All its cells. */
  cells = 0;
  /** Cells that should be numbers and say something else, in all rows so far. */
  unreadable = 0;
  private readonly numbers: NumberReader;
  /** What a cell holds: the place of a number in the row, or the places of a vector's numbers. */
  private readonly places: readonly (number | readonly number[])[];
  private readonly single: Int32Array;
  private readonly separator: number;
  private readonly stampPlace: number;

  constructor(dialect: Dialect, columns: readonly ReadColumn[]) {
    this.numbers = new NumberReader(dialect.decimalComma);
    this.separator = dialect.separator.charCodeAt(0);
    this.row = new Float64Array(columns.length).fill(Number.NaN);
    this.stampPlace = columns.findIndex(({ isStamp }) => isStamp);
    this.places = placesOf(columns);
    this.single = Int32Array.from(this.places, (place) => (typeof place === 'number' ? place : vector));
  }

  /** The whole number of the first stamp, from which stamps are counted. */
  get origin(): number {
    return this.numbers.origin;
  }

  /** Reads the line that begins at `at`; gives where the next one begins. `end` is the end of the bytes. */
  read(bytes: Uint8Array, at: number, end: number): number {
    const { separator } = this;
    this.row.fill(Number.NaN);
    this.filled = 0;
    let next = this.afterBlanks(bytes, at, end);
    if (next < end && bytes[next] === hash) {
      this.filled = -1;
      const found = bytes.indexOf(lineFeed, next);
      return found < 0 || found >= end ? end : found + 1;
    }
    for (let cell = 0; ; cell += 1) {
      next = this.afterBlanks(bytes, next, end);
      const byte = next < end ? (bytes[next] as number) : lineFeed;
      if (byte === lineFeed) {
        // Behind a separator a cell is empty, unless it is blanks at the end of the line that separate.
        this.cells = separator === blank ? cell : cell + 1;
        return next + 1;
      }
      if (byte !== separator) {
        this.filled = cell + 1;
        next = this.cell(bytes, next, end, cell);
      }
      if (next >= end || bytes[next] === lineFeed) {
        this.cells = cell + 1;
        return next + 1;
      }
      next += 1;
    }
  }

  /** Takes in the cell that begins here; gives where it ends: at the separator or at the line's end. */
  private cell(bytes: Uint8Array, at: number, end: number, cell: number): number {
    const place = cell < this.single.length ? (this.single[cell] as number) : unwanted;
    if (place === unwanted) return this.afterCell(bytes, at, end);
    return place === vector ? this.vectorAt(bytes, at, end, cell) : this.numberAt(bytes, at, end, place);
  }

  private afterBlanks(bytes: Uint8Array, at: number, end: number): number {
    let next = at;
    while (next < end) {
      const byte = bytes[next] as number;
      if (byte !== blank && byte !== carriageReturn && (byte !== tab || this.separator === tab)) break;
      next += 1;
    }
    return next;
  }

  private afterCell(bytes: Uint8Array, at: number, end: number): number {
    const { separator } = this;
    let next = at;
    const close = closing(bytes[at] as number);
    if (close !== 0) {
      next += 1;
      while (next < end && bytes[next] !== close && bytes[next] !== lineFeed) next += 1;
    }
    while (next < end) {
      const byte = bytes[next] as number;
      if (byte === separator || byte === lineFeed || (separator === blank && byte === tab)) return next;
      next += 1;
    }
    return end;
  }

  private numberAt(bytes: Uint8Array, at: number, end: number, place: number): number {
    const start = bytes[at] === quote ? at + 1 : at;
    let next =
      place === this.stampPlace
        ? this.numbers.stamp(bytes, start, end)
        : this.numbers.number(bytes, start, end);
    if (start > at && next > start && bytes[next] === quote) next += 1;
    const behind = next;
    if (this.separator !== blank) next = this.afterBlanks(bytes, next, end);
    const isWhole = behind > start && (next >= end || this.endsCell(bytes[next] as number));
    if (isWhole) {
      this.row[place] = this.numbers.value;
      return Math.min(next, end);
    }
    const to = this.afterCell(bytes, at, end);
    if (!saysMissing(bytes, at, to)) this.unreadable += 1;
    return to;
  }

  private endsCell(byte: number): boolean {
    return (
      byte === this.separator ||
      byte === lineFeed ||
      (this.separator === blank && (byte === tab || byte === carriageReturn))
    );
  }

  private vectorAt(bytes: Uint8Array, at: number, end: number, cell: number): number {
    const places = this.places[cell] as readonly number[];
    const to = this.afterCell(bytes, at, end);
    let next = at;
    for (const place of places) {
      while (next < to && isBetweenNumbers(bytes[next] as number)) next += 1;
      const after = this.numbers.number(bytes, next, to);
      if (after === next) {
        this.unreadable += 1;
        return to;
      }
      if (place >= 0) this.row[place] = this.numbers.value;
      next = after;
    }
    return to;
  }
}

function placesOf(columns: readonly ReadColumn[]): readonly (number | readonly number[])[] {
  const places: (number | number[])[] = [];
  for (const [place, { cell, part }] of columns.entries()) {
    while (places.length <= cell) places.push(unwanted);
    if (part === null) {
      places[cell] = place;
      continue;
    }
    const held = places[cell];
    const parts = typeof held === 'object' ? held : [];
    while (parts.length <= part) parts.push(unwanted);
    parts[part] = place;
    places[cell] = parts;
  }
  return places;
}

/** What ends a cell that begins with this; 0 where the separator does. */
function closing(byte: number): number {
  if (byte === quote) return quote;
  if (byte === openSquare) return closeSquare;
  return byte === openRound ? closeRound : 0;
}

function isBetweenNumbers(byte: number): boolean {
  return [tab, blank, comma, semicolon, openSquare, openRound, quote].includes(byte);
}

const longestMissing = 12;
const missingWords: ReadonlySet<string> = new Set(
  'nan +nan -nan inf +inf -inf infinity -infinity null none na n/a nil missing -'.split(' ').concat(''),
);

function saysMissing(bytes: Uint8Array, from: number, to: number): boolean {
  if (to - from > longestMissing) return false;
  const text = String.fromCharCode(...bytes.subarray(from, to));
  return missingWords.has(text.replace(/["\s]/g, '').toLowerCase());
}
