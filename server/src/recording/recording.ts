import type { Channel } from './channel';

/** Rows one after the other in time, none missing: from a row to the one before `to`. */
export interface RowStretch {
  readonly from: number;
  readonly to: number;
  /** Rows a second, Hz, by its own first and last time. */
  readonly rate: number;
}

/** One flight of a file: from arming to landing as far as the rows tell, else all that belongs together in time. */
export interface RecordedFlight {
  readonly from: number;
  readonly to: number;
  /** Parts of it without a gap; what lies between them is missing. */
  readonly stretches: readonly RowStretch[];
}

/** What a file says, once its columns are known. All channels have a value in each row; a cell that said none is NaN. */
export interface Recording {
  readonly name: string;
  /** Whether the file itself says, above its headings, that nobody flew it. */
  readonly isSimulated?: boolean;
  /** Seconds since the first row; never falls within a flight. */
  readonly time: Float64Array;
  readonly channels: ReadonlyMap<Channel, Float32Array>;
  readonly flights: readonly RecordedFlight[];
  /** What was left out or mended, as finished sentences, the weightiest first: columns, rows, cells, an end cut off. */
  readonly leftOut: readonly string[];
}
