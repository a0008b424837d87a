import type { Catalog } from '../catalog/catalog';

/**
 * What a script is taken for. `whole`: a craft, held to all that a craft needs. `part`: what other scripts include.
 * `incomplete`: something that it includes could not be read, and what seems to be missing may stand there.
 */
export type ReadAs = 'whole' | 'part' | 'incomplete' | 'empty';

/** The group that only a whole craft speaks of: with it a script is one, whoever includes it. */
const craftGroup = 'craft';

/** What else only a craft has: packs, motors, propellers, and a receiver with its link or port. */
const partsOfCrafts = ['pack', 'motor', 'prop'];
const receiver = ['receiver.link', 'receiver.port'];

/** Of a craft, what tells what it is taken for. */
interface ToBeRead {
  readonly root: { readonly isBoardText: boolean };
  isComplete(): boolean;
  isIncluded(): boolean;
  isEmpty(): boolean;
  hasGroup(group: string): boolean;
  with(pack: null): { setting(path: string): object | undefined };
}

/** What a craft's script and all that it includes are taken for together. */
export function readAs(craft: ToBeRead): ReadAs {
  if (!craft.isComplete()) return 'incomplete';
  // No board knows all of its craft.
  if (craft.root.isBoardText) return craft.isEmpty() ? 'empty' : 'part';
  if (craft.hasGroup(craftGroup)) return 'whole';
  const isSet = (path: string) => craft.with(null).setting(path) !== undefined;
  if (partsOfCrafts.some((group) => craft.hasGroup(group)) || receiver.some(isSet))
    return craft.isIncluded() ? 'part' : 'whole';
  return craft.isEmpty() ? 'empty' : 'part';
}

/** A part that speaks of so many groups may be a craft whose `[craft]` was forgotten. */
const manyGroups = 3;

/** The groups that a script speaks of which is read as a part, where they are so many that it may be a craft. */
export function groupsLikeCraft(craft: {
  readonly catalog: Pick<Catalog, 'groups'>;
  readAs(): ReadAs;
  hasGroup(group: string): boolean;
}): readonly string[] {
  if (craft.readAs() !== 'part') return [];
  const said = [...craft.catalog.groups.keys()].filter((group) => craft.hasGroup(group));
  return said.length < manyGroups ? [] : said;
}

/** What was not looked at, in a sentence; null for a whole craft. */
export function notLookedAt(is: ReadAs): string | null {
  switch (is) {
    case 'whole':
      return null;
    case 'part':
      return 'Read as a part: what a whole craft needs was not checked.';
    case 'incomplete':
      return 'Something that it includes could not be read: what a whole craft needs was not checked.';
    case 'empty':
      return 'Nothing is written here yet: there was nothing to check.';
  }
}
