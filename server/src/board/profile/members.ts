import type { BoardProfile } from '../../catalog/model/board-profile';

/** Stands in a name for the member of a collection. */
export const openMember = '{member}';

/** Members go into paths of a script: nothing else may come in through a capture. */
export const memberText = /^[a-z0-9][a-z0-9-]*$/;

/** `switch` of `switch.<function>.on`; null for a path without an open part. */
export function collectionOf(means: string): string | null {
  const at = means.indexOf('.<');
  return at < 0 ? null : means.slice(0, at);
}

/** The members of a collection that a board knows with its spelling, by ours; null: any, under its own name. */
export function membersOf(
  { members }: BoardProfile,
  means: string | undefined,
): ReadonlyMap<string, string> | null {
  const collection = means === undefined ? null : collectionOf(means);
  const known = collection === null ? undefined : Object.entries(members ?? {}).find(isOf(collection));
  return known === undefined ? null : new Map(Object.entries(known[1]));
}

function isOf(collection: string): (entry: readonly [string, unknown]) => boolean {
  return ([name]) => name === collection;
}

/** A name with the member in the place of `{member}`. */
export function withMember(text: string, spelled: string | null): string {
  return spelled === null ? text : text.replace(openMember, () => spelled);
}
