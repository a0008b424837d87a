import { type ProgressToken, type Range, RequestType } from 'vscode-languageserver-protocol';
import type { RecordingProposal, RecordingReport } from '../recording/report';
import type { LinePlot } from '../sheet/plots/plot';
import type { Target } from '../sheet/target';
import { type AboutScript, OwnRequest } from './own-message';
import { about, count, list, object, optional, text } from './requests/form';

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
  /** Which flight of the file, from 1. */
  readonly flight: number;
  /** Where the client wants to be told how far it is. */
  readonly workDoneToken?: ProgressToken;
}

const recordingAsked = { uri: text, script: optional(text), flight: count };

/** Nothing could be told; a sentence that says why, and what to do. */
export interface RecordingRefused {
  readonly kind: 'refused';
  readonly message: string;
}

export interface RecordingTold {
  readonly kind: 'told';
  readonly report: RecordingReport;
  /** What the script's filters leave, with the tones of its packs; null without a craft or where they are not known. */
  readonly filters: LinePlot | null;
  /** The lines of the settings that proposals are about, by path; none for what the script does not set. */
  readonly lines: readonly { readonly path: string; readonly target: Target }[];
}

export type RecordingAnswer = RecordingTold | RecordingRefused;

/** What a recording says: read in pieces and worked out in slices, with progress, until the request is cancelled. */
export const recordingRequest = new OwnRequest<RecordingAsked, RecordingAnswer>(
  'propsoff/recording',
  object(recordingAsked),
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
