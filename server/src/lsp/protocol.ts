import {
  NotificationType,
  type Position,
  type ProgressToken,
  type Range,
  RequestType,
} from 'vscode-languageserver-protocol';
import type { Level } from '../catalog/model/check';
import type { ReadAs } from '../craft/read-as';
import type { ReadingFault } from '../features/flight/keep-readings';
import type { FlightAnswer, FlightForm } from '../features/flight/note-flight';
import type { CardField } from '../features/flight/reading-fault';
import type { SalesAnswers, SalesQuestion } from '../features/new-script/sales-page';
import type { BenchCard } from '../sheet/bench-card/card';
import type { CardTaken } from '../sheet/bench-card/taken';
import type { Comparison } from '../sheet/compare/compare';
import type { DrawnSheet } from '../sheet/drawn-sheet';
import type { FoundValues, ProposedValues } from '../sheet/find/answer';
import type { ChannelPlan, PlannedChannel } from '../sheet/find/channels';
import { type Holds, type MoveName, moveNames } from '../sheet/find/wish';
import type { Narrowing } from '../sheet/narrowing/narrowing';
import type { TriedValue, Tryable } from '../sheet/try-value';
import type { Variant } from '../sheet/variants';
import type { FoundScripts } from '../workspace/file-system';
import { type AboutPlace, type AboutScript, OwnNotification, OwnRequest } from './own-message';
import {
  about,
  count,
  flag,
  here,
  leftOutOr,
  list,
  object,
  oneOf,
  optional,
  position,
  text,
} from './requests/form';

export type { ReadingFault } from '../features/flight/keep-readings';
export type { FlightAnswer, FlightForm } from '../features/flight/note-flight';
export type { SalesAnswers, SalesQuestion } from '../features/new-script/sales-page';
export type { FoundScripts, Unread } from '../workspace/file-system';

/** What the status bar and the build sheet ask for, beside the standard protocol. */
export interface Summary {
  readonly counts: Readonly<Record<Level, number>>;
  readonly packs: readonly string[];
  readonly packInView: string | null;
  /** What the script is taken for; a part to be included has no sheet of its own. */
  readonly readAs: ReadAs;
}

/** The counts and packs of an open script; null when it is not open. */
export const summaryRequest = new OwnRequest<AboutScript, Summary | null>('propsoff/summary', object(about));

/** What a line sets: the path that it names, and the catalogue's name of the parameter. */
export interface SetHere {
  readonly path: string;
  readonly parameter: string;
  /** The pack that the line is for alone. */
  readonly pack: string | null;
}

/** What a line sets; null where it sets nothing that is known. */
export const setHereRequest = new OwnRequest<AboutPlace, SetHere | null>('propsoff/setHere', object(here));

/** Everything about the line at a position, as Markdown. */
export const explainRequest = new OwnRequest<AboutPlace, string | null>('propsoff/explain', object(here));

/** What a check looks for and why, by its id, as Markdown; null for one that there is not. */
export const explainCheckRequest = new OwnRequest<{ readonly check: string }, string | null>(
  'propsoff/explainCheck',
  object({ check: text }),
);

export interface PlaceElsewhere {
  /** Where the text would lie: what it includes is looked for beside it. */
  readonly uri: string;
  readonly text: string;
  readonly position: Position;
}

/** What is under a position of a text that is not open here, such as an earlier revision. */
export const hoverElsewhereRequest = new OwnRequest<
  PlaceElsewhere,
  { readonly markdown: string; readonly range: Range } | null
>('propsoff/hoverElsewhere', object({ uri: text, text, position }));

/** The pack that the pilot wants to look at. */
export const packInViewNotification = new OwnNotification<{
  readonly uri: string;
  readonly pack: string | null;
}>('propsoff/packInView', object({ uri: text, pack: optional(text) }));

export interface SheetParams extends AboutScript {
  /** The record of the last hand-over as it is kept beside the script. */
  readonly handed?: string | null;
}

/** The build sheet of an open script with the pack in view. */
export const sheetRequest = new OwnRequest<SheetParams, DrawnSheet | null>(
  'propsoff/sheet',
  object({ ...about, handed: optional(text) }),
);

export interface SettingToTry {
  readonly path: string;
  /** null: the pack in view. */
  readonly pack: string | null;
}

const setting = { ...about, path: text, pack: optional(text) };

/** The setting that other values are to be tried for; null where none can be. */
export const tryableRequest = new OwnRequest<AboutScript & SettingToTry, Tryable | null>(
  'propsoff/tryable',
  object(setting),
);

export interface ValueToTry extends AboutScript, SettingToTry {
  /** As a script would write it. */
  readonly to: string;
}

/** What a value would do, with the edits that write it, which fit the text of that version only. */
export interface TryAnswer extends Omit<TriedValue, 'edits'> {
  readonly version: number;
  readonly edits: readonly { readonly range: Range; readonly newText: string }[];
}

/** What would be if a setting held something else. */
export const tryRequest = new OwnRequest<ValueToTry, TryAnswer | null>(
  'propsoff/try',
  object({ ...setting, to: text }),
);

/** What to measure so that figures get surer, with the pack in view: each is tried, which takes a while. */
export const narrowingRequest = new OwnRequest<AboutScript, readonly Narrowing[] | null>(
  'propsoff/narrowing',
  object(about),
);

/** Edits of a script as an editor counts. */
type EditsInScript = readonly { readonly range: Range; readonly newText: string }[];

/** What must hold, as it was typed: `12 dB`, `any`; null: what is usual. */
export type TypedHolds = Readonly<Record<keyof Holds, string | null>>;

export interface ValuesAsked {
  /** None: all packs of the craft. */
  readonly packs: readonly string[];
  readonly holds: TypedHolds;
  readonly moves: readonly MoveName[];
  /** Where the client wants to be told how far it is. */
  readonly workDoneToken?: ProgressToken;
}

/** A proposal with the edits that write it, which fit the text of the answer's version; none if there is another. */
export interface FoundProposal extends Omit<ProposedValues, 'edits' | 'text'> {
  readonly edits: EditsInScript;
}

export interface FindResult extends Omit<FoundValues, 'proposals'> {
  readonly kind: 'found';
  readonly version: number;
  readonly proposals: readonly FoundProposal[];
}

/** What was found; or what is wrong with what was typed, by hold, as the end of a sentence. */
export type FindAnswer =
  | FindResult
  | {
      readonly kind: 'faults';
      readonly faults: readonly { readonly hold: keyof Holds; readonly why: string }[];
    };

const hold = optional(text);

/** What to set: looked for in slices, with progress, until it is found or the request is cancelled. */
export const findRequest = new OwnRequest<AboutScript & ValuesAsked, FindAnswer | null>(
  'propsoff/find',
  object({
    ...about,
    packs: list(text),
    holds: object({ toneLeft: hold, phaseMargin: hold, gainMargin: hold, minutes: hold }),
    moves: list(oneOf(moveNames)),
  }),
);

export interface ChannelsAsked {
  readonly pilots: number;
  /** Whether the pilots that the script names stay where they are. */
  readonly keepsOthers: boolean;
}

/** The plan, with what writes each channel into the script. */
export interface ChannelsAnswer extends Omit<ChannelPlan, 'channels'> {
  readonly version: number;
  readonly channels: readonly (PlannedChannel & { readonly edits: EditsInScript })[];
}

/** The video channels of everybody who flies together. */
export const channelsRequest = new OwnRequest<AboutScript & ChannelsAsked, ChannelsAnswer | null>(
  'propsoff/channels',
  object({ ...about, pilots: count, keepsOthers: flag }),
);

export interface SettingsToWrite {
  /** Paths; of a pack that there is not yet as `pack.<name>.cells`. */
  readonly paths: readonly string[];
}

/** Lines without their values, for the text of that version only, and where the first value goes in the text with them. */
export interface LinesAnswer {
  readonly version: number;
  readonly edits: readonly { readonly range: Range; readonly newText: string }[];
  readonly at: Position;
}

/** The edits that write lines for settings which nobody has set; null where there is nothing to write. */
export const linesToWriteRequest = new OwnRequest<AboutScript & SettingsToWrite, LinesAnswer | null>(
  'propsoff/linesToWrite',
  object({ ...about, paths: list(text) }),
);

/** One side of a comparison: an open script as it stands, or a text that is not open, such as an earlier revision. */
export interface ComparedSide {
  readonly uri: string;
  /** null: the open script as it stands. */
  readonly text: string | null;
  /** What people call it. */
  readonly name: string;
  /** null: the one in view, or of that name, or the first. */
  readonly pack: string | null;
  /** A setting held otherwise than the text has it, as a script writes it; null: all as it is. */
  readonly otherwise: { readonly path: string; readonly to: string } | null;
}

export interface ComparedSides {
  readonly before: ComparedSide;
  readonly after: ComparedSide;
}

const side = object({
  uri: text,
  text: optional(text),
  name: text,
  pack: optional(text),
  otherwise: optional(object({ path: text, to: text })),
});

/** What differs between two scripts, or two packs of one; null when a script is not open. */
export const compareRequest = new OwnRequest<ComparedSides, Comparison | null>(
  'propsoff/compare',
  object({ before: side, after: side }),
);

/** What a craft may be seen beside: itself with a load or without, and in the cold; null when it is not open. */
export const variantsRequest = new OwnRequest<AboutScript, readonly Variant[] | null>(
  'propsoff/variants',
  object(about),
);

export interface LastFlight {
  /** What was kept at the last flight. */
  readonly record: string | null;
  /** 2026-05-14. */
  readonly today: string;
}

/** What is asked about a flight. */
export const flightFormRequest = new OwnRequest<AboutScript & LastFlight, FlightForm | null>(
  'propsoff/flightForm',
  object({ ...about, record: optional(text), today: text }),
);

const answer = { setting: text, typed: text };

/** Why an answer can't be written, in a sentence; null if it can. */
export const flightAnswerRequest = new OwnRequest<AboutScript & FlightAnswer, string | null>(
  'propsoff/flightAnswer',
  object({ ...about, ...answer }),
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

/** The edit that notes a flight. */
export const noteFlightRequest = new OwnRequest<AboutScript & FlightToNote, FlightNoted | null>(
  'propsoff/noteFlight',
  object({ ...about, name: text, pack: optional(text), answers: list(object(answer)) }),
);

/** The bench card of an open script with all its packs, and the same to print and as Markdown. */
export interface BenchCardAnswer {
  readonly card: BenchCard;
  readonly page: string;
  readonly markdown: string;
}

const taken = {
  ticked: list(object({ id: text, told: list(text) })),
  readings: list(object({ id: text, value: text })),
};

/** The bench card, to print with what was ticked and read off on it; null for a part that others include. */
export const benchCardRequest = new OwnRequest<
  AboutScript & { readonly taken?: CardTaken | undefined },
  BenchCardAnswer | null
>('propsoff/benchCard', object({ ...about, taken: leftOutOr(object(taken)) }));

/** A field of the card, and what was typed into it. */
export interface ReadingTyped extends CardField {
  readonly typed: string;
}

/** Why what was typed can't be what was read off, in a sentence; null if it can. */
export const checkReadingRequest = new OwnRequest<AboutScript & ReadingTyped, string | null>(
  'propsoff/checkReading',
  object({ ...about, unit: text, setting: optional(text), script: optional(text), typed: text }),
);

export interface ReadingsToKeep extends CardTaken {
  /** 2026-05-14. */
  readonly today: string;
}

/** What keeps what was read off, for the text of a version: one edit in several places. */
export interface ReadingsKept {
  readonly version: number;
  /** The sections of flights, and lines for what the script left open and what was found out. */
  readonly edits: readonly { readonly range: Range; readonly newText: string }[];
  /** What is kept until the next flight; null where none is noted. */
  readonly record: string | null;
}

/** The edit that keeps what was read off, or why it can't be kept; null where there is nothing to keep. */
export const keepReadingsRequest = new OwnRequest<
  AboutScript & ReadingsToKeep,
  ReadingsKept | { readonly faults: readonly ReadingFault[] } | null
>('propsoff/keepReadings', object({ ...about, ...taken, today: text }));

/** A file that the client wrote, perhaps where nobody watches; answered once it counts. */
export const writtenRequest = new OwnRequest<{ readonly uri: string }, null>(
  'propsoff/written',
  object({ uri: text }),
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
  | { readonly kind: 'too-long' }
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

/** Server to client: the craft scripts below a folder; of very many, so many. */
export const findScriptsRequest = new RequestType<
  { readonly uri: string; readonly most: number },
  FoundScripts,
  void
>('propsoff/findScripts');

export interface SalesPageAnswer {
  /** What is wrong with answers, by question. */
  readonly faults: Readonly<Partial<Record<SalesQuestion, string>>>;
  /** The script; null while something is wrong. */
  readonly text: string | null;
}

/** A script of what a sales page tells, and what of that can't be written. */
export const salesPageRequest = new OwnRequest<SalesAnswers, SalesPageAnswer>(
  'propsoff/salesPage',
  object({ size: text, kv: text, cells: text, propeller: text }),
);
