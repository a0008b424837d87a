import type { LayoutColumn, RecordingLayout } from '../catalog/model/recording-layout';
import { parseQuantity } from '../units/quantity';
import { parseUnit } from '../units/unit';
import type { Channel } from './channel';
import { isTaken, type ProposedColumn, type WhyLeftOut } from './learn/proposed-column';
import type { ChannelColumn, TimeColumn, WantedColumns } from './read/read-recording';
import { UnreadableRecording } from './read/source';
import type { TableColumn, TableHead } from './read/table-head';

/** A layout under the name of its file. */
export interface NamedLayout {
  readonly name: string;
  readonly layout: RecordingLayout;
}

/**
 * The layout that was confirmed for a file with these headings: the one with the same set of them. A file without
 * headings is never recognised, for its columns may be anybody's.
 */
export function layoutFor(head: TableHead, layouts: readonly NamedLayout[]): NamedLayout | null {
  if (head.headingLine === null) return null;
  const headings = new Set(head.columns.map(({ heading }) => heading));
  const isSame = ({ layout: { columns } }: NamedLayout) =>
    columns.length === headings.size && columns.every(({ heading }) => headings.has(heading));
  return layouts.find(isSame) ?? null;
}

/** What is read without a question, as a layout: to be kept once it is confirmed. */
export function layoutOf(proposed: readonly ProposedColumn[]): RecordingLayout {
  return {
    version: 1,
    columns: proposed.map((one) => (isTaken(one) ? one.means : { heading: one.means.heading })),
  };
}

/** A layout as it stands in its file: a column a line, so that it is read easily. */
export function layoutText({ rate, columns }: RecordingLayout): string {
  const rows = columns.map((column) => {
    const members = Object.entries(column).flatMap(([key, value]) =>
      value === undefined ? [] : [`${JSON.stringify(key)}: ${JSON.stringify(value)}`],
    );
    return `    { ${members.join(', ')} }`;
  });
  const paced = rate === undefined ? '' : `  "rate": ${JSON.stringify(rate)},\n`;
  return `{\n  "version": 1,\n${paced}  "columns": [\n${rows.join(',\n')}\n  ]\n}\n`;
}

/**
 * The columns to read by a layout. `remarks` are what is said of those that it leaves out.
 * @throws {UnreadableRecording} where no time can be had, or a line of the layout makes no sense
 */
export function wantedColumns(
  head: TableHead,
  layout: RecordingLayout,
  remarks: readonly string[] = [],
): WantedColumns {
  const found = layout.columns.flatMap((row) => {
    const column = head.columns.find(({ heading }) => heading === row.heading);
    return column === undefined || row.channel === undefined ? [] : [{ row, column }];
  });
  const missing = layout.columns.filter(
    (row) => row.channel !== undefined && !head.columns.some(({ heading }) => heading === row.heading),
  );
  const channels = found.flatMap(({ row, column }) => channelColumn(row, column) ?? []);
  const twice = channels.find(({ channel }, at) => channels.findIndex((one) => one.channel === channel) < at);
  if (twice !== undefined)
    throw new UnreadableRecording(`Two columns are said to hold ${twice.channel}; only one can.`);
  if (channels.length === 0)
    throw new UnreadableRecording(
      `No column of this file is known to hold gyro, motors, voltage or anything else that is asked for; say what its columns hold. ${remarks.slice(0, mostNamedInFault).join(' ')}`.trim(),
    );
  return {
    time: timeColumn(found, layout, remarks),
    channels,
    leftOut: [
      ...remarks,
      ...(missing.length === 0
        ? []
        : [
            `Not in this file, though its layout names them: ${listed(missing.map(({ heading }) => heading))}.`,
          ]),
    ],
  };
}

/** A refusal stays one that is read. */
const mostNamedInFault = 3;

interface PlacedRow {
  readonly row: LayoutColumn;
  readonly column: TableColumn;
}

function timeColumn(
  found: readonly PlacedRow[],
  { rate }: RecordingLayout,
  remarks: readonly string[],
): TimeColumn {
  const clock = found.find(({ row }) => row.channel === 'time');
  if (clock === undefined) {
    const paced = rate === undefined ? undefined : parseQuantity(rate);
    if (paced !== undefined && paced.value > 0) return { column: null, rate: paced.value };
    throw new UnreadableRecording(
      `No column is known to hold the time; say which one does, or how many rows a second there are. ${remarks.slice(0, mostNamedInFault).join(' ')}`.trim(),
    );
  }
  const parts = found.find(({ row }) => row.channel === 'time-parts');
  return {
    column: clock.column,
    seconds: factorOf(clock.row),
    parts: parts === undefined ? null : { column: parts.column, seconds: factorOf(parts.row) },
  };
}

function channelColumn(row: LayoutColumn, column: TableColumn): ChannelColumn | null {
  if (row.channel === 'time' || row.channel === 'time-parts') return null;
  const { zero = 0, full, reversed = false } = row;
  if (full === zero)
    throw new UnreadableRecording(
      `The layout says that “${row.heading}” writes ${zero} for idle and for full; the two must differ.`,
    );
  const size = full === undefined ? factorOf(row) : 1 / (full - zero);
  // The model of a layout takes no other names.
  return { column, channel: row.channel as Channel, zero, factor: reversed ? -size : size };
}

function factorOf({ heading, unit = '', scale = 1 }: LayoutColumn): number {
  const { unit: known } = parseUnit(unit);
  if (known === undefined)
    throw new UnreadableRecording(
      `The layout says that “${heading}” is in “${unit}”, which is no unit; deg/s, rad/s, rpm, V, A, us and such are.`,
    );
  return known.factor * scale;
}

/** Why a file can't be read by a layout, a sentence; null where it can. */
export function layoutRefusal(head: TableHead, layout: RecordingLayout): string | null {
  try {
    wantedColumns(head, layout);
    return null;
  } catch (error) {
    if (error instanceof UnreadableRecording) return error.message;
    throw error;
  }
}

/** What is said of columns that are not read before anybody has confirmed the layout: questions first. */
export function unreadColumns(proposed: readonly ProposedColumn[]): readonly string[] {
  const asked = proposed.filter((one) => !isTaken(one) && one.asks.length > 0);
  return [
    ...askedTogether(asked).map(
      ([sentence, list]) =>
        `${named(list)}: not read before it is said what ${list.length === 1 ? 'it is' : 'they are'}. ${sentence}`,
    ),
    ...proposed
      .filter(isTaken)
      .flatMap(({ column, asks }) => asks.map(({ sentence }) => `“${column.heading}”: ${sentence}`)),
    ...leftOutColumns(proposed),
  ];
}

/** What is said of columns that are left out though nothing is asked of them. */
export function leftOutColumns(proposed: readonly ProposedColumn[]): readonly string[] {
  const because = (reason: WhyLeftOut, sentence: string) => {
    const found = proposed.filter((one) => !isTaken(one) && one.leftOut === reason);
    return found.length === 0 ? [] : [`Not read, since ${sentence}: ${named(found)}.`];
  };
  return [
    ...because('unknown', 'nobody knows what they hold'),
    ...because('never changes', 'they never change'),
    ...because('no numbers', 'they hold no numbers'),
    ...because('not needed', 'no answer needs them'),
  ];
}

function named(columns: readonly ProposedColumn[]): string {
  return listed(columns.map(({ column }) => column.heading));
}

/** What a confirmed layout leaves out. */
export function confirmedUnread({ columns }: RecordingLayout): readonly string[] {
  const out = columns.filter(({ channel }) => channel === undefined).map(({ heading }) => heading);
  return out.length === 0 ? [] : [`Not read, as was confirmed: ${listed(out)}.`];
}

/** Columns with the same question, in their order. */
function askedTogether(
  asked: readonly ProposedColumn[],
): readonly (readonly [sentence: string, of: readonly ProposedColumn[]])[] {
  const groups = new Map<string, ProposedColumn[]>();
  for (const one of asked) {
    const sentence = one.asks.find(({ keepsOut }) => keepsOut)?.sentence ?? '';
    groups.set(sentence, [...(groups.get(sentence) ?? []), one]);
  }
  return [...groups];
}

const mostListed = 12;

function listed(names: readonly string[]): string {
  const shown = names.slice(0, mostListed).map((name) => `“${name}”`);
  const more = names.length - shown.length;
  return `${shown.join(', ')}${more > 0 ? ` and ${more} more` : ''}`;
}
