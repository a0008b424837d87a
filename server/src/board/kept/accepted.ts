import type { SettingKey } from '../listing/listing';

/** A risk of a board's setting that is accepted in the file beside its text. */
export interface AcceptedBeside {
  readonly setting: SettingKey;
  /** The id of the check that raises it. */
  readonly check: string;
  /** One line. */
  readonly reason: string;
}

/** What is kept beside a board's text. */
export interface KeptBeside {
  /** The board that it is of; null: that is found from its name and what it says. */
  readonly board: string | null;
  readonly accepted: readonly AcceptedBeside[];
  /** Why its file was not read, as the end of a sentence; null where it was, or there is none. */
  readonly fault: string | null;
}

export const nothingBeside: KeptBeside = { board: null, accepted: [], fault: null };

/** An acceptance that accepts nothing: its setting is not in the text, accepts something already, or nobody said why. */
export interface UnmatchedAcceptance {
  readonly accepted: AcceptedBeside;
  readonly why: 'no-setting' | 'accepts-already' | 'no-reason';
}

/** What is to be another way beside a text; null: that stays. */
export interface KeptChange {
  readonly board: string | null;
  /** Goes before anything is accepted. */
  readonly withdraw: Omit<AcceptedBeside, 'reason'> | null;
  readonly accept: AcceptedBeside | null;
}

/** Something is accepted, or no more. */
export type AcceptanceChange = Omit<KeptChange, 'board'>;
