import type { Look } from './values';

/** UTF-16 offsets in the whole text. */
export interface Stretch {
  readonly start: number;
  readonly end: number;
}

/** A value as a board prints it. */
export interface Value {
  readonly look: Look;
  /** Without the board's own quotes. */
  readonly text: string;
  readonly quote: string;
  /** What stands behind a number, with what stands between; null without a unit. */
  readonly unit: { readonly text: string; readonly gap: string } | null;
}

/** What a listing says of a setting beside its value; null where it says nothing of that kind. */
export interface StatedTruth {
  readonly range: { readonly low: string; readonly high: string } | null;
  readonly words: readonly string[] | null;
  readonly default: string | null;
  readonly remark: string | null;
}

/** A setting before it is printed. */
export interface Item {
  readonly groups: readonly string[];
  readonly name: string;
  readonly value: Value;
  readonly stated: StatedTruth | null;
  /** A comment that stands above it. */
  readonly above: string | null;
}

/** A part of a line. What stands for an item's name or value says so. */
export interface Piece {
  readonly text: string;
  readonly of: { readonly item: number; readonly field: 'name' | 'value' | 'unit' } | null;
}

type LineKind = 'setting' | 'comment' | 'heading' | 'other' | 'blank';

export interface Line {
  readonly kind: LineKind;
  readonly pieces: readonly Piece[];
}

/** What is true of a printed setting. */
export interface TrueSetting extends Item {
  /** 1-based, counted over equal groups and names. */
  readonly occurrence: number;
  /** 0-based, of the line on which its name stands. */
  readonly line: number;
  /** The value's is null where a bare word is all that there is. */
  readonly at: { readonly name: Stretch; readonly value: Stretch | null };
}

/** A printed listing with all that is true of it. */
export interface PrintedListing {
  readonly text: string;
  readonly settings: readonly TrueSetting[];
  /** Whole lines, without their ends. */
  readonly comments: readonly Stretch[];
  readonly headings: readonly Stretch[];
}
