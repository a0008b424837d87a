import { basename } from 'node:path';
import type { RecordingColumns } from '../../catalog/model/recording-columns';
import { type LayoutColumn, recordingLayout } from '../../catalog/model/recording-layout';
import { readPiecesOf } from '../../file-system/read-file';
import { layoutRefusal, type NamedLayout } from '../../recording/layout';
import { type LearntTable, learnTable, readLearnt, withSaid } from '../../recording/open-recording';
import { type ReadingPace, type RecordingSource, UnreadableRecording } from '../../recording/read/source';
import type { Recording } from '../../recording/recording';
import { saidColumn, saidColumnExamples } from '../../recording/said-column';
import { parseQuantity } from '../../units/quantity';
import { UsageError } from '../outcome';
import { Progress } from '../report/progress';
import type { Terminal } from '../terminal';
import { layoutsAround, namedLayout } from './layout-files';

/** What is said of a file on the command line. */
export interface WantedRecording {
  readonly path: string;
  /** The craft's script; null where none is named. */
  readonly craft: string | null;
  readonly layout: string | undefined;
  readonly said: readonly LayoutColumn[];
  readonly rate: string | undefined;
}

/** A file as far as its columns are known. */
export interface OpenedRecording {
  /** As it was typed. */
  readonly path: string;
  readonly source: RecordingSource;
  readonly table: LearntTable;
}

/** Looks at a file and finds out what its columns hold. */
export async function openedRecording(
  wanted: WantedRecording,
  words: RecordingColumns,
  terminal: Terminal,
): Promise<OpenedRecording> {
  const { path, craft, layout: name, said, rate } = wanted;
  const source = await sourceAt(path);
  const around = await layoutsAround(craft === null ? [path] : [craft, path], terminal.message);
  const named: NamedLayout | null = name === undefined ? null : await namedLayout(name, around);
  const learnt = await refusedWithPath(path, () =>
    watched(source, 'looked at', terminal, (pace) => learnTable(source, around, words, pace)),
  );
  const table = named === null ? learnt : { ...learnt, confirmed: named, proposed: [], layout: named.layout };
  const headings = new Set(table.head.columns.map(({ heading }) => heading));
  const stray = said.find(({ heading }) => !headings.has(heading));
  if (stray !== undefined)
    throw new UsageError(
      `--column: ${path} has no column "${stray.heading}"; it has ${[...headings].map((one) => `"${one}"`).join(', ')}`,
    );
  return { path, source, table: withSaid(table, said, rate) };
}

export async function readOpened(
  { path, source, table }: OpenedRecording,
  terminal: Terminal,
): Promise<Recording> {
  const why = layoutRefusal(table.head, table.layout);
  if (why !== null)
    throw new UsageError(
      `${path}: ${why} --columns shows what its columns are taken for; --column and --rate say what is not known.`,
    );
  return refusedWithPath(path, () =>
    watched(source, 'read', terminal, (pace) => readLearnt(source, table, pace)),
  );
}

async function sourceAt(path: string): Promise<RecordingSource> {
  if (path === '-')
    throw new UsageError('a recording is read twice, so it has to be a file, not standard input');
  try {
    const { size, bytes } = await readPiecesOf(path);
    return { name: basename(path), size, bytes };
  } catch (error) {
    throw new UsageError(`${path}: ${error instanceof Error ? error.message : String(error)}`);
  }
}

/** A file of which nothing can be told ends the command in one line that says why. */
async function refusedWithPath<T>(path: string, work: () => Promise<T>): Promise<T> {
  try {
    return await work();
  } catch (error) {
    if (error instanceof UnreadableRecording) throw new UsageError(`${path}: ${error.message}`);
    throw error;
  }
}

async function watched<T>(
  { size }: RecordingSource,
  done: string,
  terminal: Terminal,
  work: (pace: ReadingPace) => Promise<T>,
): Promise<T> {
  const progress = new Progress(terminal);
  try {
    return await work({
      turn: (bytes) => {
        if (size !== null)
          progress.show(`${Math.round((100 * bytes) / Math.max(1, size))} % of the file ${done}`);
        return undefined;
      },
    });
  } finally {
    progress.end();
  }
}

/** What `--column` says, each held to what a layout may hold. */
export function saidColumns(texts: readonly string[]): readonly LayoutColumn[] {
  return texts.map((text) => {
    const said = saidColumn(text);
    const kept = said === null ? undefined : recordingLayout.safeParse({ version: 1, columns: [said] }).data;
    const [column] = kept?.columns ?? [];
    if (column === undefined)
      throw new UsageError(
        `--column takes what a column holds, such as ${saidColumnExamples}; not "${text}"`,
      );
    return column;
  });
}

/** What `--rate` says: rows a second. */
export function saidRate(text: string | undefined): string | undefined {
  if (text === undefined) return undefined;
  const asRate = /^[\d.]+$/.test(text) ? `${text} Hz` : text;
  const quantity = parseQuantity(asRate);
  if (quantity === undefined || !(quantity.value > 0) || !/Hz$/.test(asRate))
    throw new UsageError(`--rate takes rows a second, such as 1000 or "1 kHz", not "${text}"`);
  return asRate;
}
