import type { Forms } from '../../catalog/model/board-forms';

/** A part of a text: UTF-16 offsets in the whole of it, `end` behind the last unit. */
export interface Stretch {
  readonly start: number;
  readonly end: number;
}

/** What a setting is known by: compared by code point, nothing folded, never joined to one text. */
export interface SettingKey {
  /** Outermost first. */
  readonly groups: readonly string[];
  readonly name: string;
  /** 1 for the first with these groups and this name in its text, 2 for the next. */
  readonly occurrence: number;
  /** Which of several values that stand in it, from 1; none where it is taken as a whole. */
  readonly item?: number | undefined;
}

/** How a value stands in the text. */
export type Style =
  | { readonly kind: 'plain' }
  /** Between two of `mark`, which are no part of the value; escapes in it are left as they stand. */
  | { readonly kind: 'quoted'; readonly mark: string }
  /**
   * The name alone says it: the value is `on`, or `off` behind the negation. Empty: how off is written is unknown. A
   * board may mark what is on as well.
   */
  | { readonly kind: 'presence'; readonly negation: string; readonly affirmation?: string };

/** What a listing says about a setting beside its value. */
export interface Stated {
  readonly range: { readonly low: string; readonly high: string } | null;
  readonly words: readonly string[] | null;
  readonly default: string | null;
  readonly unit: string | null;
  readonly remark: string | null;
  /** From the first to the last of it. */
  readonly at: Stretch;
}

export interface ListedSetting extends SettingKey {
  /** As it is written, without the board's own quotes. One that goes on over lines has a blank for each line end. */
  readonly value: string;
  readonly style: Style;
  readonly at: {
    /** Empty for an entry of a list in a document, whose name is its number. */
    readonly name: Stretch;
    /** Inside the quotes. For a name that stands alone: its mark, or the empty place for one. */
    readonly value: Stretch;
  };
  readonly stated: Stated | null;
  /** The number, as it stands there, of which it is one binary digit; none where it is a value of its own. */
  readonly packedIn?: string;
}

/** Where a group begins. */
export interface Heading {
  readonly groups: readonly string[];
  /** The name of the innermost group. */
  readonly at: Stretch;
}

/** A line before or after all settings. */
export interface Frame {
  readonly at: Stretch;
  readonly board: string | null;
  /** How many settings it says there are. */
  readonly count: number | null;
}

/** A line that could not be read. */
export interface LeftLine {
  /** From 0. */
  readonly number: number;
  readonly at: Stretch;
  /** A sentence: why. */
  readonly reason: string;
}

export type LineKind = 'settings' | 'continuation' | 'heading' | 'closer' | 'comment' | 'frame';

/** A line that was understood, without what a terminal put around it. Documents such as JSON have none. */
export interface ListedLine {
  readonly kind: LineKind;
  /** Where several lines are one, as they stand there, parted by LF. */
  readonly text: string;
  /** The settings in it: `settings[first]` up to, not including, `settings[end]`. */
  readonly first: number;
  readonly end: number;
  /** Those that are open behind it. */
  readonly groups: readonly string[];
}

/** What lines of a board's text say, with places, in the order of the text. */
export interface ListedParts {
  readonly settings: readonly ListedSetting[];
  readonly headings: readonly Heading[];
  readonly comments: readonly Stretch[];
  readonly openings: readonly Frame[];
  readonly closings: readonly Frame[];
  readonly left: readonly LeftLine[];
  readonly lines: readonly ListedLine[];
}

/** What a board's text says, with places. */
export interface Listing extends ListedParts {
  readonly text: string;
  readonly forms: Forms;
  /**
   * A line so long or longer may be taken for one that a terminal broke at its width: null where none may, 0 where some
   * were put together, so that each depends on how long all are.
   */
  readonly breaksAt: number | null;
  /** Commands that somebody typed behind the board's prompt, without it. */
  readonly echoes: readonly Stretch[];
  /** Of the lines that should be settings, the share that is: 0 to 1. */
  readonly understood: number;
  /** Why the text was not read at all: it is too long or holds too much. A sentence. */
  readonly refused: string | null;
}
