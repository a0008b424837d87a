import type { Forms } from '../../../catalog/model/board-forms';

/** What a pilot says that a line is. */
export type TaughtKind = 'setting' | 'comment' | 'heading';

/** A line of a listing, and what it is. */
export interface Lesson {
  /** From 0. */
  readonly line: number;
  readonly as: TaughtKind;
  /**
   * What the line itself does not show for sure, as it stands there: the value of a setting, the group that a heading
   * names, what a comment begins with. null: it is to be found.
   */
  readonly part: string | null;
}

/** What came of a lesson. */
export type LessonOutcome =
  | {
      readonly kind: 'taught';
      readonly forms: Forms;
      /** Other lines that were not understood before and are now read as this one is; from 0. */
      readonly alike: readonly number[];
    }
  | {
      readonly kind: 'refused';
      /** Sentences: why, and what to do. */
      readonly reason: string;
      /** Whether saying the part may help. */
      readonly asks: boolean;
    };

/** What is to be said of a line of this kind where it does not show by itself. */
export const partName: Readonly<Record<TaughtKind, string>> = {
  setting: 'its value, or its name=value',
  heading: 'the group that it names',
  comment: 'what it begins with',
};
