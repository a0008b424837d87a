import type { CraftView } from '../../server/src/craft/view';
import { axisNames } from '../../server/src/figures/axis-names';
import type { Channel } from '../../server/src/recording/channel';
import { readHead } from '../../server/src/recording/read/each-row';
import { readRecording, type WantedColumns } from '../../server/src/recording/read/read-recording';
import { type ReadingPace, type RecordingSource, unhurried } from '../../server/src/recording/read/source';
import type { Recording } from '../../server/src/recording/recording';
import type { RecordingReport } from '../../server/src/recording/report';
import { reportOf } from '../../server/src/recording/report-of';
import type { Layout } from '../simulator/csv';

/** Bytes as a file that comes in pieces. */
export function sourceOf(name: string, bytes: Uint8Array, piece = 1 << 16): RecordingSource {
  return {
    name,
    size: bytes.length,
    async *bytes() {
      for (let from = 0; from < bytes.length; from += piece) yield bytes.subarray(from, from + piece);
    },
  };
}

const channels: ReadonlyMap<string, Channel> = new Map<string, Channel>([
  ...axisNames.flatMap((axis): readonly [string, Channel][] => [
    [`gyro.${axis}`, `gyro.${axis}`],
    [`unfiltered.${axis}`, `unfiltered-gyro.${axis}`],
    [`wanted.${axis}`, `wanted.${axis}`],
  ]),
  ...[1, 2, 3, 4].flatMap((motor): readonly [string, Channel][] => [
    [`motor.${motor}`, `motor.${motor}`],
    [`speed.${motor}`, `speed.${motor}`],
  ]),
  ['throttle', 'throttle'],
  ['voltage', 'voltage'],
  ['current', 'current'],
  ['frames', 'frames'],
]);

/** A simulated file, read as somebody has said what its columns are. */
export async function recordingOf(bytes: Uint8Array, layout: Layout): Promise<Recording> {
  const source = sourceOf(`${layout.name}.csv`, bytes);
  const head = await readHead(source);
  const wanted = layout.columns.flatMap(({ of, factor, offset }, cell) => {
    const channel = channels.get(of ?? '');
    const column = head.columns.find((one) => one.cell === cell);
    return channel === undefined || column === undefined
      ? []
      : [{ column, channel, zero: offset, factor: 1 / factor }];
  });
  const at = layout.columns.findIndex(({ of }) => of === 'time');
  const column = head.columns.find(({ cell }) => cell === at);
  if (column === undefined) throw new Error(`${layout.name} has no column of time`);
  const seconds = 1 / (layout.columns[at]?.factor ?? 1);
  const columns: WantedColumns = { time: { column, seconds, parts: null }, channels: wanted, leftOut: [] };
  return readRecording(source, head, columns, unhurried);
}

const named =
  /^(?:gyro|unfiltered-gyro|wanted)\.(?:roll|pitch|yaw)$|^(?:motor|speed)\.\d+$|^(?:throttle|voltage|current|frames)$/;

/** Any file whose headings are the names of channels; its time is the column `seconds`, else the first. */
export async function readByHeadings(
  source: RecordingSource,
  pace: ReadingPace = unhurried,
): Promise<Recording> {
  const head = await readHead(source);
  const column = head.columns.find(({ heading }) => heading === 'seconds') ?? head.columns[0];
  if (column === undefined) throw new Error('a table without columns');
  const wanted = head.columns.flatMap((one) =>
    named.test(one.heading) ? [{ column: one, channel: one.heading as Channel, zero: 0, factor: 1 }] : [],
  );
  const time = { column, seconds: 1, parts: null };
  return readRecording(source, head, { time, channels: wanted, leftOut: [] }, pace);
}

/** What is told of one flight of it, at once. */
export function wholeReport(recording: Recording, flight: number, view: CraftView | null): RecordingReport {
  const work = reportOf(recording, flight, view);
  for (;;) {
    const step = work.next();
    if (step.done === true) return step.value;
  }
}
