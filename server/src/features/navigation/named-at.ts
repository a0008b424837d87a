import type { Craft } from '../../craft/craft';
import type { Script } from '../../craft/script';
import type { Position } from '../range';
import type { Snapshot } from '../snapshot';
import { type Named, type Occurrence, occurrencesIn, occurrencesOn } from './occurrences';

/** What a position names; of places inside each other the innermost. */
export function namedAt(snapshot: Snapshot, { line: number, character }: Position): Occurrence | undefined {
  const { script, catalog } = snapshot;
  const line = script.document.lineAt(number);
  if (line === undefined) return undefined;
  const here = occurrencesOn(script, line, catalog).filter(
    ({ place }) => place.start <= character && character <= place.end,
  );
  const length = ({ place }: Occurrence) => place.end - place.start;
  return here.sort((one, other) => length(one) - length(other))[0];
}

/**
 * The crafts in which something is named: the snapshot's, and of the other open ones those that share a
 * script which names it. An included script does not know who includes it, so the open crafts must be given.
 */
export function craftsNaming(snapshot: Snapshot, named: Named, open: Iterable<Craft>): readonly Craft[] {
  const joined = [snapshot.craft];
  const waiting = new Set(open);
  waiting.delete(snapshot.craft);
  const naming = new Set([snapshot.script]);
  for (let index = 0; index < joined.length; index += 1) {
    for (const script of scriptsOf(joined.slice(index, index + 1))) {
      if (occurrencesIn(script, named, snapshot.catalog).length > 0) naming.add(script);
    }
    for (const craft of waiting) {
      if (!scriptsOf([craft]).some((script) => naming.has(script))) continue;
      joined.push(craft);
      waiting.delete(craft);
    }
  }
  return joined;
}

/** Every script of some crafts once, in the order of their layers. */
export function scriptsOf(crafts: readonly Craft[]): readonly Script[] {
  return [...new Set(crafts.flatMap((craft) => craft.layers().layers.map(({ script }) => script)))];
}

/** Every place that names something in some crafts. */
export function occurrencesAcross(
  crafts: readonly Craft[],
  named: Named,
  { catalog }: Pick<Snapshot, 'catalog'>,
): readonly Occurrence[] {
  return scriptsOf(crafts).flatMap((script) => occurrencesIn(script, named, catalog));
}
