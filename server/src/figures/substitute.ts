/** Settings that others may be written in place of. */
export interface Substitute {
  readonly of: readonly string[];
  /** Each of these ways by itself. */
  readonly by: readonly SubstituteWay[];
}

export interface SubstituteWay {
  readonly write: readonly string[];
  /** What they are called together, where they are too many to name; and what that is, behind it in a sentence. */
  readonly words?: string;
  readonly detail?: string;
}

/** What may be written in place of what a figure needs: settings that are not set yet. */
export interface Instead extends SubstituteWay {
  readonly of: readonly string[];
}
