import assert from 'node:assert/strict';
import type { LayoutColumn } from '../../server/src/catalog/model/recording-layout';
import type { CraftView } from '../../server/src/craft/view';
import { axisNames } from '../../server/src/figures/axis-names';
import type { Channel } from '../../server/src/recording/channel';
import { flightRows } from '../../server/src/recording/estimate/flight-rows';
import { measuredGains } from '../../server/src/recording/estimate/gains/gains';
import { responsesOf } from '../../server/src/recording/estimate/response/response';
import type { NamedLayout } from '../../server/src/recording/layout';
import { learnTable, readLearnt } from '../../server/src/recording/open-recording';
import { type ReadingPace, type RecordingSource, unhurried } from '../../server/src/recording/read/source';
import type { Recording } from '../../server/src/recording/recording';
import type { RecordingReport } from '../../server/src/recording/report';
import { reportOf } from '../../server/src/recording/report-of';
import type { Layout } from '../simulator/csv';
import { atOnce } from './at-once';
import { testCatalog } from './catalog';

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

/** What a pilot who knows the logger says of its columns. */
export function confirmedLayout(layout: Layout): NamedLayout {
  const counts = new Map<string, number>();
  const columns = layout.columns.map(({ heading: printed, of, factor, offset }, at): LayoutColumn => {
    const count = (counts.get(printed) ?? 0) + 1;
    counts.set(printed, count);
    const heading = printed === '' ? `column ${at + 1}` : count === 1 ? printed : `${printed} (${count})`;
    const channel = of === 'time' ? 'time' : channels.get(of ?? '');
    if (channel === undefined) return { heading };
    if (channel === 'throttle' || channel.startsWith('motor'))
      return { heading, channel, zero: offset, full: offset + factor };
    const unit = unitOf(channel);
    return { heading, channel, unit, scale: 1 / Math.abs(factor), ...(factor < 0 ? { reversed: true } : {}) };
  });
  return { name: layout.name, layout: { version: 1, columns } };
}

function unitOf(channel: Channel | 'time'): string {
  if (channel === 'voltage') return 'V';
  if (channel === 'current') return 'A';
  return channel === 'time' || channel === 'frames' ? 's' : 'rad/s';
}

/** A file: learnt from itself, unless somebody has confirmed what it holds. */
export async function readFrom(
  source: RecordingSource,
  layouts: readonly NamedLayout[] = [],
  pace: ReadingPace = unhurried,
): Promise<Recording> {
  return readLearnt(source, await learnTable(source, layouts, testCatalog.recordings, pace), pace);
}

export function recordingOf(bytes: Uint8Array, layouts: readonly NamedLayout[]): Promise<Recording> {
  return readFrom(sourceOf('flight.csv', bytes), layouts);
}

/** What is told of one flight of it, at once. */
export function wholeReport(recording: Recording, flight: number, view: CraftView | null): RecordingReport {
  return atOnce(reportOf(recording, flight, view, testCatalog.recordings.findings));
}

/** How its first flight follows, and the board's gains, without the rest of a report, which takes longer than both. */
export function flownReport(
  recording: Recording,
  view: CraftView,
): Pick<RecordingReport, 'responses' | 'gains'> {
  const rows = flightRows(recording, 1) ?? assert.fail('no two rows follow each other');
  return { responses: atOnce(responsesOf(rows, view)), gains: atOnce(measuredGains(rows, view)) };
}
