import type { CancellationToken } from 'vscode-languageserver';
import type { RecordedBy } from '../../features/flight/recorded';
import { withheld } from '../../recording/estimate/span';
import { unfilteredNoise } from '../../recording/estimate/unfiltered';
import type { MeasuredNoise } from '../../recording/measured-noise';
import { learnTable, longestFlight, readLearnt } from '../../recording/open-recording';
import { UnreadableRecording } from '../../recording/read/source';
import type { Told } from '../../recording/report';
import { keptLayouts } from '../../workspace/recording-layouts';
import { sourceOf } from './recording-source';
import type { Served } from './row';
import { inSlices, paceOf } from './slices';

/** The noise before the board's filters on a flight that names its recording, of the longest flight in the file. */
export async function noiseOfFlight(
  { session, files }: Served,
  { uri, flight }: RecordedBy,
  token: CancellationToken,
  tell: (share: number, doing: string) => Promise<void>,
): Promise<Told<MeasuredNoise>> {
  try {
    const { source, size } = await sourceOf(files, uri);
    const { layouts } = await keptLayouts(files, uri);
    const pace = paceOf(token, (bytes) =>
      tell(Math.min(1, bytes / Math.max(1, size)) / 2, `reading ${source.name}`),
    );
    const table = await learnTable(source, layouts, session.workspace.catalog.recordings, pace);
    if (table.confirmed === null)
      return withheld(
        `What the columns of ${source.name} hold is not confirmed yet.`,
        'Open Recording asks for it, once for each logger; then find again.',
      );
    const recording = await readLearnt(source, table, pace);
    return await inSlices(unfilteredNoise(recording, longestFlight(recording)), token, ({ share, doing }) =>
      tell((1 + share) / 2, doing),
    );
  } catch (error) {
    if (!(error instanceof UnreadableRecording)) throw error;
    return withheld(error.message, `Mend that, or the line recording of flight ${flight}.`);
  }
}
