import type { Craft } from '../../craft/craft';
import { type Location, locationOf, type Position } from '../range';
import type { Snapshot } from '../snapshot';
import { craftsNaming, namedAt, occurrencesAcross } from './named-at';

export interface ReferenceOptions {
  /** Whether the places that set or make it count too. */
  readonly withDefinitions: boolean;
  /** Crafts of the workspace's other scripts, which may include this one. */
  readonly others?: Iterable<Craft>;
}

/**
 * Every place that names the constant, pack or parameter at a position, in all crafts that share it. Of an included
 * script every include, wherever it stands.
 */
export function references(
  snapshot: Snapshot,
  position: Position,
  { withDefinitions, others = [] }: ReferenceOptions,
): readonly Location[] {
  const here = namedAt(snapshot, position);
  if (here === undefined) return [];
  const { named } = here;
  const crafts =
    named.kind === 'include' ? [snapshot.craft, ...others] : craftsNaming(snapshot, named, others);
  return occurrencesAcross(crafts, named, snapshot)
    .filter(({ role }) => withDefinitions || role === 'use')
    .map(({ place }) => locationOf(place));
}
