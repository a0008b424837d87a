import type { Forms } from '../../catalog/model/board-forms';
import type { Span } from '../../language/ast';
import type { AcceptedBeside, KeptBeside, UnmatchedAcceptance } from '../kept/accepted';
import type { Listing, SettingKey, Stated, Style } from '../listing/listing';
import type { Profile, RowFound } from '../profile/profile';
import type { TextRange } from './text-lines';

/** A setting of a board's text, by lines of it. */
export interface LayerSetting extends SettingKey {
  readonly value: string;
  readonly style: Style;
  readonly at: { readonly name: TextRange; readonly value: TextRange };
  /** What its listing says beside it. */
  readonly stated: Omit<Stated, 'at'> | null;
  /** The number of which it is one binary digit. */
  readonly packedIn?: string;
}

/** What is stated, wherever it stands. */
export function statedAnywhere(stated: Stated | null): LayerSetting['stated'] {
  if (stated === null) return null;
  const { at: _, ...said } = stated;
  return said;
}

/** One setting as a line of a craft script. */
export interface LayerLine {
  /** A whole path with its value; nothing where another line says it. */
  readonly script: string;
  /** Where name and value stand in `script`; null where it sets nothing. */
  readonly spans: { readonly name: Span; readonly value: Span } | null;
  /** What the profile knows of it. */
  readonly found: RowFound | undefined;
  /** What is wrong with it as a line of this board. */
  readonly trouble: LayerTrouble | null;
  /** What accepts a risk of it, which the script's line has as a comment of its own. */
  readonly acceptance: LayerAcceptance | null;
}

/** Something wrong with a setting that only the board's profile can tell. */
export interface LayerTrouble {
  readonly id: 'board/unknown-setting' | 'board/value-unclear' | 'board/part-missing';
  readonly values: Readonly<Record<string, string>>;
  readonly in: 'name' | 'value';
}

/** What accepts a risk of a setting: a comment of the text, or what is kept beside it. */
export type LayerAcceptance = CommentedAcceptance | BesideAcceptance;

interface CommentedAcceptance {
  /** Without the comment's mark: `accept tune/notch-narrow: flown so for a year`. */
  readonly words: string;
  readonly at: TextRange;
}

interface BesideAcceptance {
  /** As a comment would say it. */
  readonly words: string;
  readonly at: null;
  readonly accepted: AcceptedBeside;
}

/** By the place of the setting that they are about. */
export type Acceptances = ReadonlyMap<number, LayerAcceptance>;

/** A line that could not be read, and why. */
export interface LeftInLayer {
  readonly at: TextRange;
  /** A sentence. */
  readonly reason: string;
}

/** A board's text as a craft script, so that one engine serves both: one line for each setting, in order. */
export interface BoardLayer {
  readonly text: string;
  /** The lines of the text, without their ends. */
  readonly texts: readonly string[];
  /** null: none knows the text, and its forms are found from it. */
  readonly profile: Profile | null;
  readonly forms: Forms;
  readonly settings: readonly LayerSetting[];
  /** The script's lines, one for each of `settings`; one more names the board. */
  readonly lines: readonly LayerLine[];
  readonly headings: readonly { readonly groups: readonly string[]; readonly at: TextRange }[];
  readonly left: readonly LeftInLayer[];
  /** From which length on a line may be taken for one that a terminal broke; null where none may. */
  readonly breaksAt: Listing['breaksAt'];
  /** Lines that the board does not read as settings: comments, openings, closings, what was typed. */
  readonly beside: readonly TextRange[];
  readonly acceptances: Acceptances;
  /** What is kept beside the text, and what of it accepts nothing. */
  readonly kept: KeptBeside;
  readonly unmatched: readonly UnmatchedAcceptance[];
  /** Without a profile: by key, the values that stood there when the text was opened. */
  readonly asOpened: ReadonlyMap<string, string> | null;
  /** Why the text was not read at all. */
  readonly refused: string | null;
}

/** What a layer was read as; of one that an edit patched, nothing is kept. */
const listings = new WeakMap<BoardLayer, Listing>();

export function keepListing(layer: BoardLayer, listing: Listing): void {
  listings.set(layer, listing);
}

export function keptListing(layer: BoardLayer): Listing | undefined {
  return listings.get(layer);
}

/** The script that a layer comes to. */
export function scriptTextOf({ lines, profile }: BoardLayer): string {
  return [...lines.map(({ script }) => script), boardLine(profile)].join('\n');
}

/** The last line of the script: it names the board, where one is known. */
export function boardLine(profile: Profile | null): string {
  return profile === null ? '' : `board.profile = ${profile.name}`;
}
