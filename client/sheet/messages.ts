import type { BuildSheet, SheetPart } from '../../server/src/sheet/build-sheet';
import type { Narrowing } from '../../server/src/sheet/narrowing/narrowing';
import type { Plot } from '../../server/src/sheet/plots/plot';
import type { Target } from '../../server/src/sheet/target';
import type { TriedValue, Tryable } from '../../server/src/sheet/try-value';
import type { RecordingBrief } from '../recording/brief';
import type { PageState } from './state';

/** Where the cursor stands in a script, and what its line sets: by its catalogue name, and by its whole path. */
export interface CursorPlace {
  readonly uri: string;
  readonly line: number;
  readonly parameters: readonly string[];
}

/** A setting on trial, what was tried for it, and what that would do. */
export interface TrialShown {
  readonly tryable: Tryable;
  readonly to: string | null;
  readonly tried: Omit<TriedValue, 'edits'> | null;
}

/** What the page says and offers while it has no sheet to show. */
export interface EmptyState {
  readonly text: string;
  /** The first is what most would do. */
  readonly ways: readonly {
    readonly command: string;
    readonly title: string;
    /** What the command is given. */
    readonly given?: string;
  }[];
}

/** A part of the sheet with its drawings: what the page draws, or leaves as it is. */
export interface SheetPiece {
  readonly part: SheetPart;
  readonly plots: readonly Plot[];
}

/** A sheet as the page is sent it. */
export interface SentSheet extends Omit<BuildSheet, 'parts'> {
  readonly pieces: readonly {
    readonly id: SheetPart['id'];
    /** A `SheetPiece` as JSON: an editor hands a text on faster than what it says. null: as it was sent before. */
    readonly json: string | null;
  }[];
}

/** Extension to page. */
export type ToSheet =
  | { readonly kind: 'sheet'; readonly sheet: SentSheet; readonly uri: string }
  /** What the pilot had changed about the page; comes before the first sheet. */
  | { readonly kind: 'state'; readonly state: PageState }
  /** Where the cursor stands now. */
  | { readonly kind: 'cursor'; readonly place: CursorPlace | null }
  /** null: nothing is tried. */
  | { readonly kind: 'trial'; readonly shown: TrialShown | null }
  /** What to measure so that figures get surer, of the sheet that was sent last. */
  | { readonly kind: 'narrowing'; readonly narrowing: readonly Narrowing[] }
  /** What recordings said when they were read last. */
  | { readonly kind: 'recordings'; readonly said: readonly RecordingBrief[] }
  /** No craft script is open, or the checks are not running and will not come back by themselves. */
  | { readonly kind: 'nothing'; readonly state: EmptyState };

/** Page to extension. */
export type FromSheet =
  /** The page listens now; send what there is. */
  | { readonly kind: 'ready' }
  | { readonly kind: 'go'; readonly target: Target }
  | { readonly kind: 'pack'; readonly pack: string }
  | { readonly kind: 'state'; readonly state: PageState }
  /** Another value is to be tried for a parameter, by its catalogue name; with `to` that value at once. */
  | { readonly kind: 'try'; readonly parameter: string; readonly to?: string }
  | { readonly kind: 'try-value'; readonly to: string }
  | { readonly kind: 'note-flight' }
  | { readonly kind: 'open-recording'; readonly uri: string }
  /** What to set, on a page of its own. */
  | { readonly kind: 'find-value' }
  /** Which video channels for everybody who flies together. */
  | { readonly kind: 'find-channels' }
  /** What to measure so that figures get surer. */
  | { readonly kind: 'narrow' }
  /** Lines for these settings, to be filled in. */
  | { readonly kind: 'write-lines'; readonly paths: readonly string[] }
  | { readonly kind: 'write' }
  | { readonly kind: 'leave' }
  /** One of the ways out of the empty state. */
  | { readonly kind: 'way'; readonly command: string };
