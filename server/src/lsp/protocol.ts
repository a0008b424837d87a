import { NotificationType, type Range, RequestType, RequestType0 } from 'vscode-languageserver-protocol';
import type { Level } from '../catalog/model/check';
import type { ReadAs } from '../craft/read-as';
import type { Learned } from '../features/board/learning';
import type { ReadingFault, ReadingTaken } from '../features/flight/keep-readings';
import type { FlightAnswer, FlightForm } from '../features/flight/note-flight';
import type { BenchCard } from '../sheet/bench-card/bench-card';
import type { Comparison } from '../sheet/compare/compare';
import type { DrawnSheet } from '../sheet/drawn-sheet';
import type { Tried, Tryable } from '../sheet/try-value';

export type { Learned, LearnedRow } from '../features/board/learning';
export type { ReadingFault, ReadingTaken } from '../features/flight/keep-readings';
export type { FlightAnswer, FlightForm } from '../features/flight/note-flight';

/** What the status bar and the build sheet ask for, beside the standard protocol. */
export interface Summary {
  readonly counts: Readonly<Record<Level, number>>;
  readonly packs: readonly string[];
  readonly packInView: string | null;
  /** What the script is taken for; a part to be included has no sheet of its own. */
  readonly readAs: ReadAs;
}

export interface AboutScript {
  readonly textDocument: { readonly uri: string };
}

/** Client to server: the counts and packs of an open script; null when it is not open. */
export const summaryRequest = new RequestType<AboutScript, Summary | null, void>('propsoff/summary');

/** What a line sets: the path that it names, and the catalogue's name of the parameter. */
export interface SetHere {
  readonly path: string;
  readonly parameter: string;
  /** The pack that the line is for alone. */
  readonly pack: string | null;
}

/** Client to server: what a line sets; null where it sets nothing that is known. */
export const setHereRequest = new RequestType<
  AboutScript & { readonly position: { readonly line: number; readonly character: number } },
  SetHere | null,
  void
>('propsoff/setHere');

/** Client to server: the build sheet of an open script with the pack in view. */
export const sheetRequest = new RequestType<AboutScript, DrawnSheet | null, void>('propsoff/sheet');

export interface SettingToTry {
  readonly path: string;
  /** null: the pack in view. */
  readonly pack: string | null;
}

/** Client to server: the setting that other values are to be tried for; null where none can be. */
export const tryableRequest = new RequestType<AboutScript & SettingToTry, Tryable | null, void>(
  'propsoff/tryable',
);

/** What a value would do, with the edits that write it, which fit the text of that version only. */
export interface TryAnswer extends Omit<Tried, 'edits'> {
  readonly version: number;
  readonly edits: readonly { readonly range: Range; readonly newText: string }[];
}

/** Client to server: what would be if a setting held something else, written as in a script. */
export const tryRequest = new RequestType<
  AboutScript & SettingToTry & { readonly to: string },
  TryAnswer | null,
  void
>('propsoff/try');

/** Client to server: what is asked about a flight. `record`: what was kept at the last one; `today`: 2026-05-14. */
export const flightFormRequest = new RequestType<
  AboutScript & { readonly record: string | null; readonly today: string },
  FlightForm | null,
  void
>('propsoff/flightForm');

/** Client to server: why an answer can't be written, in a sentence; null if it can. */
export const flightAnswerRequest = new RequestType<AboutScript & FlightAnswer, string | null, void>(
  'propsoff/flightAnswer',
);

export interface FlightToNote {
  readonly name: string;
  readonly pack: string | null;
  readonly answers: readonly FlightAnswer[];
}

/** The edit that notes a flight, for the text of a version, and what is kept until the next one. */
export interface FlightNoted {
  readonly version: number;
  readonly range: Range;
  readonly newText: string;
  readonly record: string;
}

/** Client to server: the edit that notes a flight. */
export const noteFlightRequest = new RequestType<AboutScript & FlightToNote, FlightNoted | null, void>(
  'propsoff/noteFlight',
);

/** The bench card of an open script with the pack in view, and the same to print and as Markdown. */
export interface BenchCardAnswer {
  readonly card: BenchCard;
  readonly page: string;
  readonly markdown: string;
}

/** Client to server: the bench card; null for a part that others include. */
export const benchCardRequest = new RequestType<AboutScript, BenchCardAnswer | null, void>(
  'propsoff/benchCard',
);

/** Client to server: the edit that keeps what was read off, or why it can't be kept. */
export const keepReadingsRequest = new RequestType<
  AboutScript & { readonly readings: readonly ReadingTaken[]; readonly today: string },
  FlightNoted | { readonly faults: readonly ReadingFault[] } | null,
  void
>('propsoff/keepReadings');

/** One side of a comparison: an open script as it stands, or a text that is not open, such as an earlier revision. */
export interface ComparedSide {
  readonly uri: string;
  /** null: the open script as it stands. */
  readonly text: string | null;
  /** What people call it. */
  readonly name: string;
  /** null: the one in view, or of that name, or the first. */
  readonly pack: string | null;
}

/** Client to server: what differs between two scripts, or two packs of one; null when a script is not open. */
export const compareRequest = new RequestType<
  { readonly before: ComparedSide; readonly after: ComparedSide },
  Comparison | null,
  void
>('propsoff/compare');

/** Client to server: the pack that the pilot wants to look at. */
export const packInViewNotification = new NotificationType<{
  readonly uri: string;
  readonly pack: string | null;
}>('propsoff/packInView');

/** Client to server: everything about the line at a position, as Markdown. */
export const explainRequest = new RequestType<
  AboutScript & { readonly position: { readonly line: number; readonly character: number } },
  string | null,
  void
>('propsoff/explain');

/** Client to server: what is under a position of a text that is not open here, such as an earlier revision. */
export const hoverElsewhereRequest = new RequestType<
  {
    /** Where the text would lie: what it includes is looked for beside it. */
    readonly uri: string;
    readonly text: string;
    readonly position: { readonly line: number; readonly character: number };
  },
  { readonly markdown: string; readonly range: Range } | null,
  void
>('propsoff/hoverElsewhere');

/** A board that a text can be written for. */
export interface BoardChoice {
  readonly name: string;
  readonly title: string;
}

/** No text could be made; why, in a sentence, and which boards there are. */
interface NoBoard {
  readonly kind: 'no-board';
  readonly message: string;
  readonly boards: readonly BoardChoice[];
}

export interface BoardTextParams extends AboutScript {
  /** null: the board that the script sets. */
  readonly board: string | null;
  /** The record of the last hand-over, as it stands in its file, to get only what changed; null: everything. */
  readonly since: string | null;
  /** Why it is wanted in spite of must-fix findings; null: it is not. */
  readonly reason: string | null;
  /** Only to be looked at: nothing holds it back. */
  readonly isPreview: boolean;
}

export type BoardTextAnswer =
  | NoBoard
  | { readonly kind: 'blocked'; readonly blocking: readonly string[] }
  | {
      readonly kind: 'text';
      readonly board: BoardChoice;
      readonly pack: string | null;
      /** As the board takes it at once, one piece after the other. */
      readonly pieces: readonly string[];
      readonly count: number;
      /** What was not checked, since the script is no whole craft; null: all was. */
      readonly unchecked: string | null;
      /** What was not checked, rounded, left out or kept back, a line each. */
      readonly report: readonly string[];
      /** What is to be remembered of it once it is handed over. */
      readonly record: string;
    };

/** Client to server: a craft in its board's text. */
export const boardTextRequest = new RequestType<BoardTextParams, BoardTextAnswer | null, void>(
  'propsoff/boardText',
);

export type ReadAnswer =
  | NoBoard
  | {
      readonly kind: 'script';
      readonly text: string;
      readonly board: BoardChoice;
      /** What became of the lines, a line each. */
      readonly summary: readonly string[];
    };

/** Client to server: a craft script from a captured text. `board`: null where the text itself is to show it. */
export const readRequest = new RequestType<
  { readonly capture: string; readonly board: string | null },
  ReadAnswer,
  void
>('propsoff/read');

export type ProveAnswer =
  | NoBoard
  | {
      readonly kind: 'proof';
      readonly markdown: string;
      readonly summary: string;
      readonly isEqual: boolean;
      /** 0-based lines of the capture. */
      readonly problems: readonly { readonly line: number; readonly message: string }[];
    };

/** Client to server: whether a capture shows what an open script says. */
export const proveRequest = new RequestType<
  AboutScript & { readonly capture: string; readonly board: string | null },
  ProveAnswer | null,
  void
>('propsoff/prove');

/** Client to server: the boards that a text can be written for. */
export const boardsRequest = new RequestType0<readonly BoardChoice[], void>('propsoff/boards');

/** Client to server: what an unknown listing says, with proposals for a person to confirm. */
export const learnRequest = new RequestType<{ readonly capture: string }, Learned, void>('propsoff/learn');

/** Client to server: names of the parameters that a board's setting may be said to stand for. */
export const parametersRequest = new RequestType0<readonly string[], void>('propsoff/parameters');

export interface MakeProfileParams {
  readonly capture: string;
  readonly name: string;
  /** What was confirmed: a setting's key and the parameter that it stands for. */
  readonly confirmed: readonly (readonly [key: string, parameter: string])[];
}

/** Client to server: the profile as JSON; null: the text holds no settings. */
export const makeProfileRequest = new RequestType<
  MakeProfileParams,
  { readonly text: string; readonly mapped: number; readonly own: number } | null,
  void
>('propsoff/makeProfile');

/** Client to server: whose text an open board text is. */
export const boardOfNotification = new NotificationType<{ readonly uri: string; readonly board: string }>(
  'propsoff/boardOf',
);

/**
 * What a client says under `experimental.propsoff` of its capabilities: which of our own messages it takes. One that
 * says nothing of it, as all editors but ours, gets none of them.
 */
export interface OwnAbilities {
  /** `propsoff/checked`. */
  readonly checked: boolean;
  /** `propsoff/readFile`, `propsoff/listFolder` and `propsoff/findScripts`. */
  readonly files: boolean;
  /** The commands of our client, behind code lenses. */
  readonly commands: boolean;
}

/** Server to client: a script has been checked again; ask for what you show of it. */
export const checkedNotification = new NotificationType<{ readonly uri: string }>('propsoff/checked');

/** A file as the editor's own file system has it. */
export type FileAnswer =
  | { readonly kind: 'text'; readonly text: string }
  | { readonly kind: 'missing' }
  /** `why`: the end of a sentence. */
  | { readonly kind: 'unreadable'; readonly why: string };

/** Server to client: a file that the server can't read itself. `longest`: in bytes; a longer one is refused. */
export const readFileRequest = new RequestType<
  { readonly uri: string; readonly longest: number },
  FileAnswer,
  void
>('propsoff/readFile');

/** Server to client: names of the files right in a folder; none where there is no such folder. */
export const listFolderRequest = new RequestType<{ readonly uri: string }, readonly string[], void>(
  'propsoff/listFolder',
);

/** Server to client: the craft scripts in the workspace's folder that holds a script; of very many, some. */
export const findScriptsRequest = new RequestType<
  { readonly uri: string; readonly most: number },
  readonly string[],
  void
>('propsoff/findScripts');
