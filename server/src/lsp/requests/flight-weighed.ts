import type { CancellationToken } from 'vscode-languageserver';
import type { Craft } from '../../craft/craft';
import type { RecordedBy } from '../../features/flight/recorded';
import { viewFlown } from '../../features/flight/recording-beside-script';
import { measuredFlight } from '../../recording/estimate/measured-flight';
import { withheld } from '../../recording/estimate/span';
import { flightTaken } from '../../recording/flight-taken';
import type { MeasuredFlight } from '../../recording/measured-flight';
import { learnTable, readLearnt } from '../../recording/open-recording';
import { UnreadableRecording } from '../../recording/read/source';
import type { FileSystem } from '../../workspace/file-system';
import { keptLayouts } from '../../workspace/recording-layouts';
import { sourceOf } from './recording-source';
import type { Services } from './row';
import { inSlices, paceOf } from './slices';

/** So many flights are kept as they were measured last: a megabyte or so each. */
const mostKept = 3;

/** By file, with all that the answer hangs on: the file as it was, what its columns hold, and the craft. */
const kept = new WeakMap<FileSystem, Map<string, { readonly of: string; readonly flight: MeasuredFlight }>>();

/**
 * What the longest flight in the file that a flight of a craft names is to be weighed by. It is read once: until the file,
 * what is confirmed of its columns, or the craft has changed.
 */
export async function flightWeighed(
  { session, files }: Services,
  craft: Craft,
  { uri, flight }: RecordedBy,
  token: CancellationToken,
  report: (share: number, doing: string) => Promise<void>,
): Promise<MeasuredFlight> {
  try {
    const { source, size, changedAt } = await sourceOf(files, uri);
    const { layouts } = await keptLayouts(files, uri);
    const texts = craft.layers().layers.map(({ script }) => [script.uri, script.document.text()]);
    const of = changedAt === null ? null : JSON.stringify([size, changedAt, layouts, texts]);
    const known = kept.get(files)?.get(uri);
    if (known !== undefined && known.of === of) return known.flight;
    const pace = paceOf(token, (bytes) =>
      report(Math.min(1, bytes / Math.max(1, size)) / 2, `reading ${source.name}`),
    );
    const table = await learnTable(source, layouts, session.workspace.catalog.recordings, pace);
    if (table.confirmed === null)
      return none(
        `What the columns of ${source.name} hold is not confirmed yet.`,
        'Open Recording asks for it, once for each logger; then find again.',
      );
    const recording = await readLearnt(source, table, pace);
    const view = viewFlown(craft, uri, craft.packs()[0] ?? null);
    const measured = await inSlices(
      measuredFlight(recording, flightTaken(recording, null) ?? 1, view),
      token,
      ({ share, doing }) => report((1 + share) / 2, doing),
    );
    if (of !== null) keep(files, uri, { of, flight: measured });
    return measured;
  } catch (error) {
    if (!(error instanceof UnreadableRecording)) throw error;
    return none(error.message, `Mend that, or the line recording of flight ${flight}.`);
  }
}

function none(reason: string, advice: string): MeasuredFlight {
  const why = withheld(reason, advice);
  return { noise: why, loops: why };
}

function keep(
  files: FileSystem,
  uri: string,
  one: { readonly of: string; readonly flight: MeasuredFlight },
): void {
  const all = kept.get(files) ?? new Map();
  kept.set(files, all);
  // What was read last stands last.
  all.delete(uri);
  all.set(uri, one);
  for (const oldest of all.keys()) {
    if (all.size <= mostKept) return;
    all.delete(oldest);
  }
}
