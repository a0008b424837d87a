import type { KeptChange } from '../board/kept/accepted';
import { type AboutScript, OwnNotification, OwnRequest } from './own-message';
import { about, count, flag, leftOutOr, list, object, optional, text } from './requests/form';

export type { AcceptanceChange } from '../board/kept/accepted';

/** A board that a text can be written for. */
export interface BoardChoice {
  readonly name: string;
  readonly title: string;
}

export interface KeepParams {
  /** The board's text. */
  readonly uri: string;
  readonly change: KeptChange;
}

export type KeepAnswer =
  /** What the file beside the text is to hold. */
  { readonly kind: 'file'; readonly uri: string; readonly text: string } | NotSaid;

const accepted = {
  setting: object({ groups: list(text), name: text, occurrence: count, item: leftOutOr(count) }),
  check: text,
};

/** The file beside a board's text, with something of it changed. */
export const keepRequest = new OwnRequest<KeepParams, KeepAnswer>(
  'propsoff/keep',
  object({
    uri: text,
    change: object<KeptChange>({
      board: optional(text),
      withdraw: optional(object(accepted)),
      accept: optional(object({ ...accepted, reason: text })),
    }),
  }),
);

/** The boards that a text can be written for. */
export const boardsRequest = new OwnRequest<object, readonly BoardChoice[]>('propsoff/boards', object({}));

/** Whose text an open board text is. */
export const boardOfNotification = new OwnNotification<{ readonly uri: string; readonly board: string }>(
  'propsoff/boardOf',
  object({ uri: text, board: text }),
);

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
      /** Whether nobody has said how the board is told a setting: the lines are written as it lists them. */
      readonly isAssumed: boolean;
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

/** A craft in its board's text. */
export const boardTextRequest = new OwnRequest<BoardTextParams, BoardTextAnswer | null>(
  'propsoff/boardText',
  object({ ...about, board: optional(text), since: optional(text), reason: optional(text), isPreview: flag }),
);

export interface CapturedText {
  readonly capture: string;
  readonly board: string | null;
}

const capture = { capture: text, board: optional(text) };

export type ReadAnswer =
  | NoBoard
  | {
      readonly kind: 'script';
      readonly text: string;
      readonly board: BoardChoice;
      /** What became of the lines, a line each. */
      readonly summary: readonly string[];
    };

export interface ReadParams extends CapturedText {
  /** Of a text that is open or a file; null: there is nothing beside it. */
  readonly uri: string | null;
}

/** A craft script from a captured text. `board`: null where the text itself is to show it. */
export const readRequest = new OwnRequest<ReadParams, ReadAnswer>(
  'propsoff/read',
  object({ ...capture, uri: optional(text) }),
);

export type ProveAnswer =
  | NoBoard
  | {
      readonly kind: 'proof';
      readonly markdown: string;
      readonly summary: string;
      readonly isWhole: boolean;
      /** Whether the board lists only what differs from its defaults, as a question; null where nothing speaks for it. */
      readonly question: string | null;
      /** 0-based lines of the capture. */
      readonly problems: readonly { readonly line: number; readonly message: string }[];
    };

export interface ProveParams extends AboutScript, CapturedText {
  /** The board lists only what differs from its defaults, whatever its profile says. */
  readonly omitsDefaults: boolean;
}

/** Whether a capture shows what an open script says. `board`: null for the board that the script sets. */
export const proveRequest = new OwnRequest<ProveParams, ProveAnswer | null>(
  'propsoff/prove',
  object({ ...about, ...capture, omitsDefaults: flag }),
);

/** `message`: a sentence. */
export interface NotSaid {
  readonly kind: 'refused';
  readonly message: string;
}

/** A text that is to be a board's text, with the name that its file has or would have. */
export interface NewBoardTextParams {
  readonly text: string;
  readonly fileName: string;
}

export interface NewBoardText {
  readonly board: string;
  /** Of a new board, its profile as the text of a file; null: one lists all the settings already. */
  readonly profile: string | null;
  /** Whether the file's name alone leads to that board. */
  readonly isByName: boolean;
  readonly settings: number;
  readonly groups: number;
  /** Lines that were not understood. */
  readonly left: number;
}

/** null: no line of the text looks like a setting. */
export const newBoardTextRequest = new OwnRequest<NewBoardTextParams, NewBoardText | null>(
  'propsoff/newBoardText',
  object({ text, fileName: text }),
);
