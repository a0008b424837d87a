import type { Craft } from '../../craft/craft';
import { type Location, locationOf, type Position } from '../range';
import type { Snapshot } from '../snapshot';
import { craftsNaming, namedAt, occurrencesAcross } from './named-at';

export interface ReferenceOptions {
  /** Whether the places that set or make it count too. */
  readonly withDefinitions: boolean;
  /** Crafts of other open scripts, which may include this one. */
  readonly open?: Iterable<Craft>;
}

/** Every place that names the constant, pack, parameter or included script at a position. */
export function references(
  snapshot: Snapshot,
  position: Position,
  { withDefinitions, open = [] }: ReferenceOptions,
): readonly Location[] {
  const here = namedAt(snapshot, position);
  if (here === undefined) return [];
  return occurrencesAcross(craftsNaming(snapshot, here.named, open), here.named, snapshot)
    .filter(({ role }) => withDefinitions || role === 'use')
    .map(({ place }) => locationOf(place));
}
