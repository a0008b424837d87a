import type { RecordingColumns } from '../catalog/model/recording-columns';
import type { RecordingLayout } from '../catalog/model/recording-layout';
import { layoutFor, layoutOf, type NamedLayout, unreadColumns, wantedColumns } from './layout';
import { proposeColumns } from './learn/propose-columns';
import type { ProposedColumn } from './learn/proposed-column';
import { readHead } from './read/each-row';
import { readRecording } from './read/read-recording';
import type { ReadingPace, RecordingSource } from './read/source';
import { surveyOf } from './read/survey';
import type { TableHead } from './read/table-head';
import type { Recording } from './recording';

/** A file with what its columns are taken for. */
export interface LearntTable {
  readonly head: TableHead;
  /** Confirmed by a pilot; null where it is proposed. */
  readonly confirmed: NamedLayout | null;
  /** One for each column; none where the layout is confirmed. */
  readonly proposed: readonly ProposedColumn[];
  /** What is read: the confirmed layout, else all that no question keeps out. */
  readonly layout: RecordingLayout;
}

/** What the columns of a file hold: as a pilot has confirmed it for such a file, else as it is learnt from the rows. */
export async function learnTable(
  source: RecordingSource,
  layouts: readonly NamedLayout[],
  words: RecordingColumns,
  pace: ReadingPace,
): Promise<LearntTable> {
  const head = await readHead(source);
  const confirmed = layoutFor(head, layouts);
  if (confirmed !== null) return { head, confirmed, proposed: [], layout: confirmed.layout };
  const proposed = proposeColumns(await surveyOf(source, head, pace), words);
  return { head, confirmed: null, proposed, layout: layoutOf(proposed) };
}

/** Reads a file whose columns are known. */
export async function readLearnt(
  source: RecordingSource,
  { head, proposed, layout }: LearntTable,
  pace: ReadingPace,
): Promise<Recording> {
  return readRecording(source, head, wantedColumns(head, layout, unreadColumns(proposed)), pace);
}
