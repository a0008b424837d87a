import type { Position, ProgressToken, Range } from 'vscode-languageserver-protocol';
import type { FoundValues, ProposedValues } from '../sheet/find/answer';
import type { ChannelPlan, PlannedChannel } from '../sheet/find/channels';
import { type Holds, type MoveName, moveNames } from '../sheet/find/wish';
import type { Narrowing } from '../sheet/narrowing/narrowing';
import type { TriedValue, Tryable } from '../sheet/try-value';
import { type AboutScript, OwnRequest } from './own-message';
import { about, count, flag, list, object, oneOf, optional, text } from './requests/form';

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
