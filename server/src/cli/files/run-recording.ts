import { resolve } from 'node:path';
import { URI } from 'vscode-uri';
import type { RecordingColumns } from '../../catalog/model/recording-columns';
import type { CraftView } from '../../craft/view';
import { packTaken, viewFlown, writtenGains } from '../../features/flight/recording-beside-script';
import { changeOf, lateOf } from '../../recording/change-of';
import { doing } from '../../recording/estimate/noise/shaken';
import { flightTaken } from '../../recording/flight-taken';
import { confirmedUnread, layoutRefusal, leftOutColumns } from '../../recording/layout';
import type { Recording } from '../../recording/recording';
import type { RecordingReport } from '../../recording/report';
import { reportOf } from '../../recording/report-of';
import { recordingChanges } from '../../sheet/compare/recordings';
import { recordingModels } from '../../sheet/recording-model';
import { axisRows, type BesideRecording, noScriptBeside } from '../../sheet/recording-rows';
import { exitCodes, UsageError } from '../outcome';
import { Progress } from '../report/progress';
import { recordingChangesText } from '../report/recording-changes-text';
import { columnLines, linesText, questionLines, recordingText } from '../report/recording-text';
import { jsonText, visible } from '../report/visible';
import type { Terminal } from '../terminal';
import { keepLayout } from './layout-files';
import { type OneScript, oneScript, usable } from './one-script';
import { type OpenedRecording, openedRecording, readOpened, saidColumns, saidRate } from './opened-recording';

/** What was typed. */
export interface AskedRecording {
  readonly path: string;
  readonly craft?: string | undefined;
  readonly pack?: string | undefined;
  readonly flight?: string | undefined;
  readonly compare?: string | undefined;
  readonly column?: readonly string[] | undefined;
  readonly rate?: string | undefined;
  readonly layout?: string | undefined;
  readonly confirm?: string | undefined;
  readonly columns?: boolean | undefined;
  readonly json?: boolean | undefined;
}

/** Reads a recording and tells what it says. */
export async function runRecording(asked: AskedRecording, terminal: Terminal): Promise<number> {
  const said = saidColumns(asked.column ?? []);
  const rate = saidRate(asked.rate);
  const craft =
    asked.craft === undefined
      ? null
      : await oneScript({ command: 'recording', path: asked.craft }, asked.pack, terminal);
  const words = (craft?.around ?? (await usable())).additions.catalog.recordings;
  const open = (path: string) =>
    openedRecording(
      { path, craft: asked.craft ?? null, layout: asked.layout, said: path === asked.path ? said : [], rate },
      words,
      terminal,
    );
  const found = await open(asked.path);
  const opened = asked.confirm === undefined ? found : await kept(asked.confirm, asked, found, terminal);
  if (opened === null) return exitCodes.findings;
  if (asked.columns === true) return reportColumns(opened, asked, terminal);
  const view = craft === null ? null : flownView(craft, asked);
  const taken = view === null || asked.pack !== undefined ? [] : packTaken(view, uriOf(asked));
  // The earlier one first: of two recordings of 100 MB only one is held at a time.
  const before =
    asked.compare === undefined
      ? null
      : await reported(await open(asked.compare), { flight: undefined, view, words }, terminal);
  const alone = await reported(opened, { flight: asked.flight, view, words }, terminal);
  const grown = before === null ? [] : changeOf(flown(before), flown(alone), words.findings);
  const report = {
    ...alone,
    leftOut: [...taken, ...alone.leftOut],
    findings: [...grown, ...alone.findings],
  };
  const compared = before === null ? null : { before, grown, changes: recordingChanges(before, report) };
  await terminal.out(await answerText(asked, { opened, view, report, compared }, terminal));
  return report.findings.some(({ level }) => level !== 'note') ? exitCodes.findings : exitCodes.fine;
}

/** What came of it: with an earlier recording what has changed since, else what the recording says. */
interface RecordingAnswered {
  readonly opened: OpenedRecording;
  readonly view: CraftView | null;
  readonly report: RecordingReport;
  readonly compared: {
    readonly before: RecordingReport;
    readonly grown: ReturnType<typeof changeOf>;
    readonly changes: ReturnType<typeof recordingChanges>;
  } | null;
}

function answerText(
  asked: AskedRecording,
  { opened, view, report, compared }: RecordingAnswered,
  terminal: Terminal,
): string | Promise<string> {
  if (asked.json === true)
    return jsonText({
      version: 1,
      columns: columnRows(opened),
      report,
      rows: axisRows(report, besideRecording(view, terminal)),
      before: compared?.before ?? null,
      changes: compared?.changes ?? null,
    });
  const now = { ...report, name: asked.path };
  if (compared === null) return recordingText(now, opened.table, terminal, besideRecording(view, terminal));
  const { before, changes, grown } = compared;
  return recordingChangesText(
    { ...before, name: asked.compare ?? before.name },
    now,
    { changes, grown },
    terminal,
  );
}

function flown(report: RecordingReport) {
  return { ...report, late: lateOf(report) };
}

/** What the script lets expect of what was measured. */
export function besideRecording(view: CraftView | null, terminal: Terminal): BesideRecording {
  if (view === null) return noScriptBeside;
  const work = doing(recordingModels(view), 1, 'what the script lets expect');
  return { models: new Progress(terminal).through(work), gains: writtenGains(view) };
}

/** With the pack that was asked for, else the one of the flight that names the recording. */
export function flownView(
  { craft, view }: OneScript,
  asked: Pick<AskedRecording, 'path' | 'pack'>,
): CraftView {
  return asked.pack === undefined ? viewFlown(craft, uriOf(asked), view.pack) : view;
}

function uriOf({ path }: Pick<AskedRecording, 'path'>): string {
  return URI.file(resolve(path)).toString();
}

/** Keeps the layout, which is then confirmed; null where something is to be said first. */
async function kept(
  name: string,
  { path }: AskedRecording,
  opened: OpenedRecording,
  terminal: Terminal,
): Promise<OpenedRecording | null> {
  const { table } = opened;
  const why = layoutRefusal(table.head, table.layout);
  const open = [...questionLines(table), ...(why === null ? [] : [why])];
  if (open.length > 0) {
    terminal.message('Before it is kept, this has to be said:');
    for (const line of open) terminal.message(line);
    return null;
  }
  const file = await keepLayout(name, path, table.layout);
  terminal.message(
    table.head.headingLine === null
      ? `Kept in ${file}: a file without headings is known by nothing, so that --layout ${name} has to be said each time.`
      : `Kept in ${file}: files with these headings are known from now on.`,
  );
  return { ...opened, table: { ...table, proposed: [], confirmed: { name: file, layout: table.layout } } };
}

async function reportColumns(
  opened: OpenedRecording,
  { json }: AskedRecording,
  terminal: Terminal,
): Promise<number> {
  const { table } = opened;
  const why = layoutRefusal(table.head, table.layout);
  const open = [...questionLines(table), ...(why === null ? [] : [why])];
  const unread = table.confirmed === null ? leftOutColumns(table.proposed) : confirmedUnread(table.layout);
  await terminal.out(
    json === true
      ? jsonText({
          version: 1,
          columns: columnRows(opened),
          report: null,
          rows: null,
          before: null,
          changes: null,
        })
      : linesText(
          [
            ...open,
            ...(open.length === 0 ? [] : ['']),
            ...columnLines(table),
            ...unread.map((line) => `  ${visible(line)}`),
          ],
          terminal,
        ),
  );
  return open.length > 0 ? exitCodes.findings : exitCodes.fine;
}

function columnRows({ table: { proposed, layout } }: OpenedRecording) {
  const byHeading = new Map(proposed.map((one) => [one.column.heading, one]));
  return layout.columns.map((column) => {
    const one = byHeading.get(column.heading);
    return { ...column, why: one?.why ?? null, asks: (one?.asks ?? []).map(({ sentence }) => sentence) };
  });
}

/** What one flight of a file says; without a number of the longest. */
export async function reported(
  opened: OpenedRecording,
  {
    flight,
    view,
    words,
  }: {
    readonly flight: string | undefined;
    readonly view: CraftView | null;
    readonly words: RecordingColumns;
  },
  terminal: Terminal,
): Promise<RecordingReport> {
  const recording = await readOpened(opened, terminal);
  const work = reportOf(recording, flightNumber(recording, flight), view, words.findings);
  return new Progress(terminal).through(work);
}

function flightNumber(recording: Recording, said: string | undefined): number {
  const taken = flightTaken(recording, said === undefined ? null : Number(said));
  if (taken === null && said !== undefined)
    throw new UsageError(`--flight takes a number from 1 to ${recording.flights.length}, not "${said}"`);
  // Of a file without a flight it is told what it lacks.
  return taken ?? 1;
}
