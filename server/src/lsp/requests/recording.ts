import type { CancellationToken } from 'vscode-languageserver';
import { layoutIn } from '../../additions/read-layout';
import type { RecordingLayout } from '../../catalog/model/recording-layout';
import { fileName } from '../../craft/include-path';
import { recordedFlights } from '../../features/flight/recorded';
import {
  besideScript,
  namingRecording,
  packTaken,
  viewFlown,
} from '../../features/flight/recording-beside-script';
import { measuredEdits } from '../../features/flight/use-measured';
import { changeOf } from '../../recording/change-of';
import { channelsOffered } from '../../recording/channel-choices';
import { doing } from '../../recording/estimate/noise/shaken';
import { flightTaken } from '../../recording/flight-taken';
import { layoutText, wantedColumns } from '../../recording/layout';
import { type LearntTable, learnTable, readLearnt } from '../../recording/open-recording';
import { readHead } from '../../recording/read/each-row';
import { type ReadingPace, type RecordingSource, UnreadableRecording } from '../../recording/read/source';
import { reportOf } from '../../recording/report-of';
import { recordingModels } from '../../sheet/recording-model';
import { canonicalUri } from '../../workspace/canonical-uri';
import { keptLayouts } from '../../workspace/recording-layouts';
import type {
  ColumnsToConfirm,
  FlightRecorded,
  FlightsAsked,
  FlightsInOrder,
  LayoutSaid,
  MeasuredToWrite,
  MeasuredWritten,
  RecordingAnswer,
  RecordingAsked,
  RecordingFinding,
  RecordingRefused,
} from '../recording-protocol';
import { readInFull, type ScriptContext } from './about-script';
import { sourceOf } from './recording-source';
import type { Services } from './row';
import { inSlices, paceOf } from './slices';

/** Shares of the work, as far as anybody can say: what the columns hold, the rows, and what they tell. */
const learning = 0.25;
const reading = 0.75;

/** What a recording says. It is read in pieces and worked out in slices, so that keystrokes are not kept waiting. */
export async function answerRecording(
  services: Services,
  asked: RecordingAsked,
  token: CancellationToken,
): Promise<RecordingAnswer> {
  const progress = services.wholeWorkspace.progress(asked.workDoneToken, 'Open Recording');
  const report = (share: number, doing: string) => progress.report(Math.round(100 * share), 100, doing);
  try {
    return await answerFrom(services, asked, token, report);
  } catch (error) {
    if (error instanceof UnreadableRecording) return refused(error.message);
    throw error;
  } finally {
    progress.end();
  }
}

type ReportProgress = (share: number, doing: string) => Promise<void>;

async function answerFrom(
  { session, files }: Services,
  { uri, script, flight, layout, confirmsAnew }: RecordingAsked,
  token: CancellationToken,
  progress: ReportProgress,
): Promise<RecordingAnswer> {
  const { source, size } = await sourceOf(files, uri);
  const pace = (from: number, to: number, doing: string): ReadingPace =>
    paceOf(token, (bytes) => progress(from + (to - from) * Math.min(1, bytes / Math.max(1, size)), doing));
  const kept = layout === null ? await keptLayouts(files, uri) : { layouts: [], faults: [] };
  const words = session.workspace.catalog.recordings;
  const table =
    layout === null
      ? await learnTable(source, kept.layouts, words, pace(0, learning, 'looking at its columns'))
      : await saidTable(source, layout);
  if (table.confirmed === null || confirmsAnew) return toConfirm(words, table, kept.faults);
  const recording = await readLearnt(source, table, pace(learning, reading, 'reading its rows'));
  const taken = flightTaken(recording, flight);
  if (taken === null)
    throw new UnreadableRecording(noSuchFlight(source.name, flight, recording.flights.length));
  if (script !== null) await readInFull(session, script, token);
  const snapshot = script === null ? undefined : session.snapshot(script);
  // On a copy: the script may be edited while it is worked out.
  const view =
    snapshot === undefined ? null : viewFlown(snapshot.craft.copied(), canonicalUri(uri), snapshot.pack);
  const report = await inSlices(reportOf(recording, taken, view, words.findings), token, ({ share, doing }) =>
    progress(reading + (1 - reading) * share, doing),
  );
  const pack = view === null ? [] : packTaken(view, canonicalUri(uri));
  const all = { ...report, leftOut: [...pack, ...kept.faults, ...report.leftOut] };
  if (view === null) return { kind: 'told', report: all, filters: null, lines: [], models: [], gains: [] };
  return {
    kind: 'told',
    report: namingRecording(all, view, canonicalUri(uri)),
    ...besideScript(view, report),
    models: await inSlices(
      doing(recordingModels(view), 1, 'what the script lets expect'),
      token,
      ({ share, doing: what }) => progress(share, what),
    ),
  };
}

function noSuchFlight(name: string, flight: number | null, flights: number): string {
  if (flight === null || flights === 0) return `${name} holds no flight: no rows follow each other in time.`;
  return `${name} holds ${flights === 1 ? 'one flight' : `${flights} flights`}: there is no flight ${flight}.`;
}

/** A file whose columns a pilot has just said. */
async function saidTable(source: RecordingSource, text: string): Promise<LearntTable> {
  const layout = layoutSaid(text);
  const head = await readHead(source);
  return { head, confirmed: { name: '', layout }, proposed: [], layout };
}

function layoutSaid(text: string): RecordingLayout {
  const { layout, fault } = layoutIn(text);
  if (layout === null) throw new UnreadableRecording(`What was said of the columns can’t be kept: ${fault}.`);
  return layout;
}

function toConfirm(
  words: Parameters<typeof channelsOffered>[0],
  { head, proposed, confirmed }: LearntTable,
  faults: readonly string[],
): ColumnsToConfirm {
  const columns =
    confirmed === null
      ? proposed.map(({ means, why, asks }) => ({ means, why, asks }))
      : confirmed.layout.columns.map((means) => ({ means, why: 'As it was confirmed.', asks: [] }));
  const motors = columns.filter(({ means }) => /^(?:motor|speed)\./.test(means.channel ?? '')).length;
  return {
    kind: 'columns',
    columns,
    choices: channelsOffered(words, motors),
    remarks: [...faults, ...head.remarks],
    isFoundAgain: head.headingLine !== null,
    // One that was just said has no file.
    kept: confirmed === null || confirmed.name === '' ? null : withoutEnding(confirmed.name),
  };
}

/** `tern` of `recordings/tern.json`. */
function withoutEnding(name: string): string {
  return fileName(name).replace(/\.json$/, '');
}

/** A layout as its file is to hold it, once it is sure that the file can be read by it. */
export async function columnsConfirmed(
  { files }: Services,
  { uri, layout: text }: LayoutSaid,
): Promise<{ readonly kind: 'confirmed'; readonly text: string } | RecordingRefused> {
  try {
    const { source } = await sourceOf(files, uri);
    const layout = layoutSaid(text);
    wantedColumns(await readHead(source), layout);
    return { kind: 'confirmed', text: layoutText(layout) };
  } catch (error) {
    if (error instanceof UnreadableRecording) return refused(error.message);
    throw error;
  }
}

function refused(message: string): RecordingRefused {
  return { kind: 'refused', message };
}

/** What has grown from one flight to the next, the latest first. */
export function noiseGrown({ session }: Services, { flights }: FlightsInOrder): readonly RecordingFinding[] {
  const words = session.workspace.catalog.recordings.findings;
  const shaking = flights.map(({ name, rate, axes, late }) => ({
    name,
    rate,
    noise: { told: axes, basis: '' },
    late,
  }));
  return shaking
    .slice(1)
    .flatMap((after, at) => {
      const before = shaking[at];
      return before === undefined ? [] : changeOf(before, after, words);
    })
    .reverse();
}

/** The flights of all scripts of the workspace that name a recording. */
export async function flightsRecorded(
  { session, wholeWorkspace }: Services,
  { recording, script }: FlightsAsked,
  token: CancellationToken,
): Promise<readonly FlightRecorded[]> {
  const crafts = await wholeWorkspace.crafts({ about: script, isAwaited: false }, token);
  const isAsked = (asked: string | null, uri: string) =>
    asked === null || canonicalUri(asked) === canonicalUri(uri);
  return crafts
    .filter(({ root }) => isAsked(script, root.uri))
    .flatMap((craft) =>
      recordedFlights(craft).map((one) => ({ ...one, script: session.clientUri(craft.root.uri) })),
    )
    .filter(({ uri }) => isAsked(recording, uri));
}

/** The edits that write what was measured, for the text as it stands; null where it can't be written. */
export function measuredWritten(
  { session, snapshot }: ScriptContext,
  { sets }: MeasuredToWrite,
): MeasuredWritten | null {
  const version = session.workspace.get(snapshot.uri)?.version;
  const edits = measuredEdits(snapshot, sets);
  if (version === undefined || edits === null) return null;
  return { version, edits: edits.map((edit) => session.clientEdit(snapshot.script, edit)) };
}
