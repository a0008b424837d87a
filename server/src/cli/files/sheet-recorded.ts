import { URI } from 'vscode-uri';
import { lastRecorded } from '../../features/flight/recorded';
import { viewFlown } from '../../features/flight/recording-beside-script';
import { measuredText } from '../../recording/find/measured-text';
import { flightTakenText } from '../../recording/flight-taken';
import { type AnswerBeside, answersBeside } from '../../sheet/answers-beside';
import { type AxisRow, axisRows } from '../../sheet/recording-rows';
import { UsageError } from '../outcome';
import type { Terminal } from '../terminal';
import type { OneScript } from './one-script';
import { openedRecording } from './opened-recording';
import { besideRecording, reported } from './run-recording';
import { shownPath } from './script-paths';

/** What a flight measured beside what its craft's sheet computes. */
export interface SheetRecorded {
  /** The name of its section. */
  readonly flight: string;
  /** 2026-06-12; null where the script says none. */
  readonly date: string | null;
  /** As it was flown; null where the craft names none. */
  readonly pack: string | null;
  /** The file, or which of its flights. */
  readonly recording: string;
  /** By figures of the sheet. */
  readonly answers: readonly AnswerBeside[];
  readonly rows: readonly AxisRow[];
  readonly isSimulated: boolean;
  /** What the axes rest on, in words; null where none is told of. */
  readonly basis: string | null;
  /** Why no axis is told of; null where one is. */
  readonly why: string | null;
}

/** Reads the recording of the last flight that names one. */
export async function sheetRecorded(
  { craft, view, file, around }: OneScript,
  terminal: Terminal,
): Promise<SheetRecorded> {
  const last = lastRecorded(craft);
  if (last === null)
    throw new UsageError(
      `--recorded: no flight of ${file.path} names a recording; one does with recording = "flight.csv" in its section`,
    );
  const path = shownPath(URI.parse(last.uri).fsPath);
  const words = around.additions.catalog.recordings;
  const wanted = { path, craft: file.path, layout: undefined, said: [], rate: undefined };
  const flown = viewFlown(craft, last.uri, view.pack);
  const opened = await openedRecording(wanted, words, terminal);
  const report = await reported(opened, { flight: undefined, view: flown, words }, terminal);
  const { responses } = report;
  return {
    flight: last.flight,
    date: last.date,
    pack: flown.pack,
    recording: flightTakenText(path, report, null),
    answers: answersBeside(report, measuredText),
    rows: axisRows(report, besideRecording(flown, terminal)),
    isSimulated: report.isSimulated,
    basis: 'basis' in responses ? responses.basis : null,
    why: 'reason' in responses ? `${responses.reason} ${responses.advice}` : null,
  };
}
