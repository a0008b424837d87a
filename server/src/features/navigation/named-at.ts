import type { Craft } from '../../craft/craft';
import type { Script } from '../../craft/script';
import type { Position } from '../range';
import type { Snapshot } from '../snapshot';
import { type NamedThing, type Occurrence, occurrencesIn, occurrencesOn } from './occurrences';

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
 * The crafts in which something is named: the snapshot's, and of the others those that share a script which names it,
 * with one of these or with the snapshot's. An included script does not know who includes it, so they must be given.
 */
export function craftsNaming(
  snapshot: Snapshot,
  named: NamedThing,
  others: Iterable<Craft>,
): readonly Craft[] {
  const craftsOf = craftsByScript(others);
  const joined = new Set([snapshot.craft]);
  const looked = new Set<Script>();
  const join = (script: Script) => {
    for (const craft of craftsOf.get(script) ?? []) joined.add(craft);
  };
  join(snapshot.script);
  // What is joined on the way is looked at as well.
  for (const craft of joined) {
    for (const script of scriptsOf([craft])) {
      if (looked.has(script)) continue;
      looked.add(script);
      if (occurrencesIn(script, named, snapshot.catalog).length > 0) join(script);
    }
  }
  return [...joined];
}

function craftsByScript(crafts: Iterable<Craft>): ReadonlyMap<Script, readonly Craft[]> {
  const byScript = new Map<Script, Craft[]>();
  for (const craft of crafts) {
    for (const script of scriptsOf([craft])) {
      const known = byScript.get(script);
      if (known === undefined) byScript.set(script, [craft]);
      else known.push(craft);
    }
  }
  return byScript;
}

/** Every script of some crafts once, in the order of their layers. */
export function scriptsOf(crafts: readonly Craft[]): readonly Script[] {
  return [...new Set(crafts.flatMap((craft) => craft.layers().layers.map(({ script }) => script)))];
}

/** Every place that names something in some crafts. */
export function occurrencesAcross(
  crafts: readonly Craft[],
  named: NamedThing,
  { catalog }: Pick<Snapshot, 'catalog'>,
): readonly Occurrence[] {
  return scriptsOf(crafts).flatMap((script) => occurrencesIn(script, named, catalog));
}
