import type { Sureness } from '../../board/learn/propose/proposal';
import type { PartHeld, RowMeant } from '../../catalog/model/board-profile';

/** One way in which a value may be counted, and what the row says then. */
export interface MeaningWay {
  /** `in tenths of %` */
  readonly title: string;
  readonly row: RowMeant;
  readonly quantity: string | null;
  readonly lies: 'usual' | 'possible' | 'outside' | null;
}

/** Something that a setting may mean, with what its row would say of it. */
export interface MeaningChoice {
  /** The path of a script: `switch.arm.on`; a pack stays open. */
  readonly means: string;
  /** `low`; null where it holds the whole. */
  readonly part: string | null;
  readonly as: PartHeld | null;
  /** What is counted alike and taken together: `control.*.proportional`. */
  readonly family: string;
  readonly title: string;
  /** Why it may mean that: a sentence. */
  readonly reason: string;
  /** What the row says once it is taken; null: how it is counted has to be said first. */
  readonly row: RowMeant | null;
  /** What its value comes to; null: it can't be read so. */
  readonly quantity: string | null;
  readonly usual: string | null;
  readonly lies: MeaningWay['lies'];
  /** Why it is counted so, or why that is not known, as the end of a sentence. */
  readonly counted: string;
  readonly ways: readonly MeaningWay[];
  /** Whether it may play the part with nobody knowing its scale. */
  readonly takesRole: boolean;
}

/** What the profile says of a setting. */
export interface MeaningSaid {
  readonly means: string;
  readonly title: string;
  readonly family: string;
  readonly isRole: boolean;
  readonly row: RowMeant;
  readonly quantity: string | null;
  readonly usual: string | null;
  readonly lies: MeaningWay['lies'];
}

/** A setting with what it may mean, or with what is said of it. */
export interface MeaningRow {
  /** `calm/first-cut` */
  readonly key: string;
  readonly group: string;
  readonly name: string;
  readonly value: string;
  /** The values, where several stand in it. */
  readonly values: readonly string[];
  /** What it may hold, as far as the listing shows: its values, its words, the whole numbers of a short range. */
  readonly words: readonly string[];
  /** What the listing says beside it, in one text. */
  readonly beside: string;
  readonly sureness: Sureness | null;
  readonly choices: readonly MeaningChoice[];
  readonly said: MeaningSaid | null;
  /** The line on which it stands, from 0; null where no text is at hand. */
  readonly line: number | null;
  /** The port that it may say the use of; null for any other setting. */
  readonly port: string | null;
  /** Whether its row says it of all members together: it is changed in the file. */
  readonly isShared: boolean;
}
