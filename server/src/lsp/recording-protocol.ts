import { type ProgressToken, type Range, RequestType } from 'vscode-languageserver-protocol';
import type { LayoutColumn } from '../catalog/model/recording-layout';
import type { AxisLate } from '../recording/change-of';
import type { ChannelOffered } from '../recording/channel-choices';
import type { ColumnQuestion } from '../recording/learn/proposed-column';
import type {
  AxisNoise,
  MeasuredSpan,
  RecordingFinding,
  RecordingProposal,
  RecordingReport,
} from '../recording/report';
import type { LinePlot } from '../sheet/plots/plot';
import type { AxisModel } from '../sheet/recording-model';
import type { WrittenGain } from '../sheet/recording-rows';
import type { Target } from '../sheet/target';
import { type AboutScript, OwnRequest } from './own-message';
import { about, count, flag, leftOutOr, list, number, object, oneOf, optional, text } from './requests/form';

export type { LayoutColumn } from '../catalog/model/recording-layout';
export type { ChannelOffered } from '../recording/channel-choices';

export type { ColumnQuestion } from '../recording/learn/proposed-column';
export type * from '../recording/report';

/** A flight of a script with the recording that it names. */
export interface FlightRecorded {
  readonly script: string;
  /** The name of its section. */
  readonly flight: string;
  /** 2026-06-12; null where the script says none. */
  readonly date: string | null;
  /** The file. */
  readonly uri: string;
  /** As the script names it. */
  readonly path: string;
}

export interface FlightsAsked {
  /** Those that name this file; null: any. */
  readonly recording: string | null;
  /** Those of this script; null: of all. */
  readonly script: string | null;
}

/** The flights of scripts of the workspace that name a recording. */
export const recordedFlightsRequest = new OwnRequest<FlightsAsked, readonly FlightRecorded[]>(
  'propsoff/recordedFlights',
  object({ recording: optional(text), script: optional(text) }),
);

export interface RecordingAsked {
  readonly uri: string;
  /** The open script of the craft that was flown; null: none is known. */
  readonly script: string | null;
  /** Which flight of the file, from 1; null: the longest. */
  readonly flight: number | null;
  /** What its columns hold, as the text of a layout that a pilot has just confirmed; null: as it is kept. */
  readonly layout: string | null;
  /** The columns are to be looked through once more, though they have been confirmed. */
  readonly confirmsAnew: boolean;
  /** Where the client wants to be told how far it is. */
  readonly workDoneToken?: ProgressToken;
}

/** Nothing could be told; a sentence that says why, and what to do. */
export interface RecordingRefused {
  readonly kind: 'refused';
  readonly message: string;
}

export interface RecordingReported {
  readonly kind: 'told';
  readonly report: RecordingReport;
  /** What the script's filters leave, with the tones of its packs; null without a craft or where they are not known. */
  readonly filters: LinePlot | null;
  /** The lines of the settings that proposals are about, by path; none for what the script does not set. */
  readonly lines: readonly { readonly path: string; readonly target: Target }[];
  /** What the script lets expect of how its axes follow; none without a craft, or where it says too little. */
  readonly models: readonly AxisModel[];
  /** The gains that the script sets. */
  readonly gains: readonly WrittenGain[];
}

/** A column of a file whose logger nobody has confirmed yet. */
export interface ColumnShown {
  /** What it is taken for; without a channel it is left out. */
  readonly means: LayoutColumn;
  /** What speaks for it, a sentence. */
  readonly why: string;
  readonly asks: readonly ColumnQuestion[];
}

/** What the columns are taken for has to be confirmed first, once for each logger. */
export interface ColumnsToConfirm {
  readonly kind: 'columns';
  readonly columns: readonly ColumnShown[];
  readonly choices: readonly ChannelOffered[];
  /** What was said of the file's head, as finished sentences. */
  readonly remarks: readonly string[];
  /** Whether a layout that is kept is found again: a file without headings may be anybody's. */
  readonly isFoundAgain: boolean;
  /** What the layout is called that holds them now: `tern`; null: none does. */
  readonly kept: string | null;
}

export type RecordingAnswer = RecordingReported | ColumnsToConfirm | RecordingRefused;

/** What the columns of a file hold, as a layout's text or its likes; `uri`: the file. */
export interface LayoutSaid {
  readonly uri: string;
  readonly layout: string;
}

/** A layout as its file is to hold it; or why it can't be had so. */
export const confirmColumnsRequest = new OwnRequest<
  LayoutSaid,
  { readonly kind: 'confirmed'; readonly text: string } | RecordingRefused
>('propsoff/confirmColumns', object({ uri: text, layout: text }));

/** What a recording says: read in pieces and worked out in slices, with progress, until the request is cancelled. */
export const recordingRequest = new OwnRequest<RecordingAsked, RecordingAnswer>(
  'propsoff/recording',
  object({
    uri: text,
    script: optional(text),
    flight: optional(count),
    layout: optional(text),
    confirmsAnew: flag,
  }),
);

/** How a craft shook about each axis on a flight. */
export interface FlightShaking {
  /** The file's name. */
  readonly name: string;
  /** Rows a second, Hz. */
  readonly rate: number;
  readonly axes: readonly { readonly axis: AxisNoise['axis']; readonly shaking: MeasuredSpan }[];
  /** How late it was about each axis; left out where nobody looked. */
  readonly late?: readonly AxisLate[] | undefined;
}

/** Each one is held against the one before it. */
export interface FlightsInOrder {
  readonly flights: readonly FlightShaking[];
}

const anAxis = oneOf<AxisNoise['axis']>(['roll', 'pitch', 'yaw']);
const measured = object({ likely: number, low: number, high: number, unit: text });

/** What has grown from one flight to the next; the latest first. */
export const grownRequest = new OwnRequest<FlightsInOrder, readonly RecordingFinding[]>(
  'propsoff/grown',
  object({
    flights: list(
      object({
        name: text,
        rate: number,
        axes: list(object({ axis: anAxis, shaking: measured })),
        late: leftOutOr(
          list(object({ axis: anAxis, delay: optional(measured), phaseMargin: optional(measured) })),
        ),
      }),
    ),
  }),
);

export interface MeasuredToWrite extends AboutScript {
  readonly sets: RecordingProposal['sets'];
}

/** The edits that write what was measured, for the text of that version only. */
export interface MeasuredWritten {
  readonly version: number;
  readonly edits: readonly { readonly range: Range; readonly newText: string }[];
}

/** *Use What Was Measured*; null where the script is not open. */
export const useMeasuredRequest = new OwnRequest<MeasuredToWrite, MeasuredWritten | null>(
  'propsoff/useMeasured',
  object({ ...about, sets: list(object({ path: text, value: text, comment: text })) }),
);

/** A piece of a file as the editor's own file system has it. */
export interface FilePiece {
  readonly kind: 'piece';
  /** A character for each byte: a connection of texts carries it as it is. Empty at the end. */
  readonly bytes: string;
  /** Of the whole file, in bytes. */
  readonly size: number;
  /** When it was changed last, ms since 1970; left out where nobody says. */
  readonly changedAt?: number;
}

export type PieceAnswer =
  | FilePiece
  | { readonly kind: 'missing' }
  /** `why`: the end of a sentence. */
  | { readonly kind: 'unreadable'; readonly why: string };

/** So many bytes from a place of a file. */
export interface PieceAsked {
  readonly uri: string;
  readonly from: number;
  readonly length: number;
}

/** Server to client: a piece of a file that the server can't read itself. */
export const readPieceRequest = new RequestType<PieceAsked, PieceAnswer, void>('propsoff/readPiece');

/** The bytes that a text has a character for each of. */
export function bytesOf(characters: string): Uint8Array {
  return Uint8Array.from(characters, (one) => one.charCodeAt(0));
}

/** A text with a character for each byte. */
export function charactersOf(bytes: Uint8Array): string {
  const parts: string[] = [];
  // A call takes only so many arguments.
  for (let from = 0; from < bytes.length; from += 4096)
    parts.push(String.fromCharCode(...bytes.subarray(from, from + 4096)));
  return parts.join('');
}
