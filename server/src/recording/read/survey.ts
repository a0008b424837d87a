import { eachRow } from './each-row';
import { refuseFewRows } from './read-recording';
import { RowReader } from './row-reader';
import type { ReadingPace, RecordingSource } from './source';
import type { TableColumn, TableHead } from './table-head';

/** Some rows from all over a file, from which is learnt what its columns hold. */
export interface RowSurvey {
  readonly head: TableHead;
  readonly columns: readonly SurveyedColumn[];
  /** Rows that were looked at. */
  readonly rows: number;
}

export interface SurveyedColumn extends TableColumn {
  /** Numbers of rows at even distances, NaN where a cell says none. */
  readonly values: Float64Array;
  /** The numbers of the rows right behind those. */
  readonly next: Float64Array;
}

const mostRows = 8192;
const mostCells = 1 << 20;
/** Of fewer columns all may rest at zero for a while. */
const fewestWithZeros = 3;

/**
 * Looks at rows at even distances through the whole file, for motors may stand in its first minute; more than so many
 * are never held, whatever its length.
 */
export async function surveyOf(
  source: RecordingSource,
  head: TableHead,
  pace: ReadingPace,
): Promise<RowSurvey> {
  const reader = new RowReader(
    head.dialect,
    head.columns.map(({ cell, part }) => ({ cell, part, isStamp: false })),
  );
  const sample = new EvenSample(reader.row);
  refuseFewRows(await eachRow(source, head, reader, pace, sample));
  const columns = head.columns.map((column, at) => ({ ...column, ...sample.column(at) }));
  return { head, columns, rows: sample.count };
}

/** Pairs of rows at even distances: as they grow too many, every second pair goes, and the distance doubles. */
class EvenSample {
  count = 0;
  private readonly width: number;
  private readonly most: number;
  private readonly held: Float64Array;
  private readonly followers: Float64Array;
  private apart = 2;
  private isFollower = false;

  constructor(private readonly row: Float64Array) {
    this.width = row.length;
    this.most = Math.min(mostRows, Math.max(64, Math.floor(mostCells / this.width)));
    this.held = new Float64Array(this.most * this.width);
    this.followers = new Float64Array(this.most * this.width).fill(Number.NaN);
  }

  take(): boolean {
    if (this.isOfZeros()) return true;
    if (this.isFollower) {
      this.followers.set(this.row, (this.count - 1) * this.width);
      this.isFollower = false;
      return true;
    }
    if (this.count === this.most) this.thin();
    this.held.set(this.row, this.count * this.width);
    this.count += 1;
    this.isFollower = true;
    return true;
  }

  /** Loggers write such rows before they have measured anything; one of them holds a stamp. */
  private isOfZeros(): boolean {
    let others = 0;
    for (const value of this.row) if (value !== 0) others += 1;
    return others <= 1 && this.width > fewestWithZeros;
  }

  skip(): number {
    return this.isFollower ? 0 : this.apart - 2;
  }

  column(at: number): Pick<SurveyedColumn, 'values' | 'next'> {
    const of = (rows: Float64Array) =>
      Float64Array.from({ length: this.count }, (_, row) => rows[row * this.width + at] as number);
    return { values: of(this.held), next: of(this.followers) };
  }

  private thin(): void {
    const { width } = this;
    for (let to = 0; to < this.most / 2; to += 1) {
      this.held.copyWithin(to * width, 2 * to * width, (2 * to + 1) * width);
      this.followers.copyWithin(to * width, 2 * to * width, (2 * to + 1) * width);
    }
    this.count = Math.floor(this.most / 2);
    this.apart *= 2;
    this.followers.fill(Number.NaN, this.count * width);
  }
}
