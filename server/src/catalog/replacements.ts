import type { Level } from './model/check';

/** Something that a file of the workspace stands in place of. */
export interface Replacement {
  /** What it is: "check", "chemistry". */
  readonly what: string;
  readonly name: string;
  /** Who replaced it, for people: `propsoff/club.json`. */
  readonly file: string;
  /** Of a check: the level that it had, and the one that it has. */
  readonly levels: { readonly before: Level; readonly now: Level } | null;
}

/** "propsoff/club.json replaces the check power/warn-below-land: it was a must-fix and is now a risk." */
export function replacementText({ what, name, file, levels }: Replacement): string {
  const sentence = `${file} replaces the ${what} ${name}`;
  if (levels === null || levels.before === levels.now) return `${sentence}.`;
  return `${sentence}: it was a ${levels.before} and is now a ${levels.now}.`;
}
