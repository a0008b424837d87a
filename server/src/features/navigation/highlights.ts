import { type Position, type Range, rangeOf } from '../range';
import type { Snapshot } from '../snapshot';
import { namedAt } from './named-at';
import { occurrencesIn } from './occurrences';

export interface Highlight {
  readonly range: Range;
  /** Whether the place sets it or only reads it. */
  readonly kind: 'write' | 'read';
}

/** Every place of the script that names what stands at a position. */
export function highlights(snapshot: Snapshot, position: Position): readonly Highlight[] {
  const here = namedAt(snapshot, position);
  if (here === undefined) return [];
  return occurrencesIn(snapshot.script, here.named, snapshot.catalog).map(({ place, role }) => ({
    range: rangeOf(place),
    kind: role === 'definition' ? 'write' : 'read',
  }));
}
