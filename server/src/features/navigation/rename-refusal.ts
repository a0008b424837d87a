import type { Catalog } from '../../catalog/catalog';
import type { Craft } from '../../craft/craft';
import { functions } from '../../craft/functions';
import { fileName } from '../../craft/include-path';
import type { Snapshot } from '../snapshot';
import { occurrencesAcross } from './named-at';
import type { NamedThing } from './occurrences';

const legal = /^[A-Za-z][A-Za-z0-9]*(?:-[A-Za-z0-9]+)*$/;

/** Why something can't have a name, as a sentence; null where it can. */
export function refusalOf(snapshot: Snapshot, crafts: readonly Craft[], named: NamedThing): string | null {
  const { kind, name } = named;
  if (!legal.test(name)) {
    return `A ${kind} can't be called "${name}": a name is a letter, then letters and digits, with single hyphens between.`;
  }
  if (kind === 'constant' && meansSomething(name, snapshot.catalog)) {
    return `A constant can't be called ${name}: the word has a meaning of its own in a value.`;
  }
  const [taken] = occurrencesAcross(crafts, named, snapshot);
  if (taken === undefined) return null;
  const { script, line } = taken.place;
  const where = script === snapshot.script ? '' : ` of ${fileName(script.uri)}`;
  return `The name ${name} is taken by a ${kind} in line ${script.lineNumber(line) + 1}${where}.`;
}

/** Words that stand in place of a number, such as `auto`, and the functions: a constant would be shadowed. */
function meansSomething(name: string, catalog: Catalog): boolean {
  if (functions.has(name)) return true;
  return [...catalog.parameters.values()].some(
    ({ parameter }) =>
      (parameter.kind === 'quantity' || parameter.kind === 'count') &&
      parameter.orWords?.some((word) => word.name === name),
  );
}
