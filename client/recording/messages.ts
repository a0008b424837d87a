import type {
  ColumnsToConfirm,
  FlightRecorded,
  LayoutColumn,
  RecordingFinding,
  RecordingReported,
} from '../../server/src/lsp/recording-protocol';
import type { RecordingChange } from '../../server/src/sheet/compare/recordings';
import type { Target } from '../../server/src/sheet/target';

/** A recording as people know it, with the craft that it is told for. */
export interface RecordingName {
  /** `0612.csv` */
  readonly file: string;
  /** `sandmartin.craft`; null: none is known. */
  readonly script: string | null;
}

/** One side of a comparison. */
export interface ComparedRecording {
  /** `0612.csv`, `0612.csv before the change` */
  readonly name: string;
  readonly reported: RecordingReported;
}

/** A flight of the script that names a recording, and how it shook; or why that is not known, a sentence. */
export interface FlightNoise {
  readonly flight: FlightRecorded;
  readonly reported: RecordingReported | null;
  readonly why: string | null;
}

/** What a pilot said of a file's columns: a layout but for its version. */
export interface SaidColumns {
  /** Rows a second of a logger that writes no time, `1000 Hz`; null: a column holds the time. */
  readonly rate: string | null;
  readonly columns: readonly LayoutColumn[];
}

/** Extension to page. */
export type ToRecording =
  /** It is being read: how far it is, from 0 to 1, and with what. */
  | { readonly kind: 'reading'; readonly name: RecordingName; readonly share: number; readonly doing: string }
  | { readonly kind: 'told'; readonly name: RecordingName; readonly reported: RecordingReported }
  | {
      readonly kind: 'compared';
      /** Of one recording, told for the script before and after a change: only the script differs. */
      readonly isSame: boolean;
      readonly before: ComparedRecording;
      readonly after: ComparedRecording;
      readonly changes: readonly RecordingChange[];
      /** What has grown since. */
      readonly grown: readonly RecordingFinding[];
    }
  /** What its columns hold has to be confirmed first. */
  | { readonly kind: 'columns'; readonly name: RecordingName; readonly asked: ColumnsToConfirm }
  /** What was said of the columns can't be had so; a sentence. */
  | { readonly kind: 'columns-refused'; readonly why: string }
  | {
      readonly kind: 'history';
      readonly flights: readonly FlightNoise[];
      readonly grown: readonly RecordingFinding[];
    }
  /** A proposal stands in the script now. */
  | { readonly kind: 'written'; readonly title: string }
  /** Nothing comes of it; `why` is a sentence. */
  | { readonly kind: 'nothing'; readonly name: RecordingName; readonly why: string };

/** Page to extension. */
export type FromRecording =
  | { readonly kind: 'ready' }
  | { readonly kind: 'stop' }
  | { readonly kind: 'read-again' }
  /** Another flight of the file, from 1. */
  | { readonly kind: 'flight'; readonly flight: number }
  /** Another script is to be the craft's. */
  | { readonly kind: 'script' }
  /** The columns are to be looked through once more. */
  | { readonly kind: 'confirm-anew' }
  /** What the columns hold; `isKept`: it is kept for all files of that logger. */
  | { readonly kind: 'columns'; readonly said: SaidColumns; readonly isKept: boolean }
  | { readonly kind: 'compare' }
  | { readonly kind: 'history' }
  /** Back from a comparison or the history. */
  | { readonly kind: 'back' }
  | { readonly kind: 'open'; readonly uri: string }
  | { readonly kind: 'go'; readonly target: Target }
  /** A proposal of the report, by its title. */
  | { readonly kind: 'write'; readonly title: string };
