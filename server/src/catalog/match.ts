import type { Pattern } from './path-patterns';

/** How a written path came to be taken for a pattern. */
export type Likeness = 'spelling' | 'order' | 'word-missing' | 'word-extra' | 'section' | 'synonym';

/** A pattern that a path probably means. */
export interface Match {
  readonly pattern: Pattern;
  /** The path to write; members that the writer has not named stand as placeholders. */
  readonly path: string;
  readonly why: Likeness;
  /** Smaller is nearer. */
  readonly cost: number;
}
