import type { FoundParameter } from '../../catalog/catalog';
import type { Port } from '../../catalog/model/board-hardware';
import type { Choice } from '../../catalog/model/parameter';
import { motorPlaces } from '../../figures/layouts';
import type { Snapshot } from '../snapshot';

/** The words that a parameter takes on this craft, each with what it means: its board's ports, its packs. */
export function choicesHere(
  { craft, catalog }: Pick<Snapshot, 'craft' | 'catalog'>,
  found: FoundParameter,
): readonly Choice[] {
  const ports = (craft.board()?.hardware?.ports ?? []).map(portChoice);
  const packs = craft.packs().map((name) => ({ name, summary: 'A pack of this craft.' }));
  const choices = catalog.choices(found.parameter, { ports, packs });
  const allowed = craft.words(found);
  const taken = allowed === null ? choices : choices.filter(({ name }) => allowed.includes(name));
  return found.name === 'motor.order' ? onLayout(craft, taken) : taken;
}

/** The same, best first: of ports those that serve nothing else and are free. */
export function likelyChoices(
  of: Pick<Snapshot, 'craft' | 'catalog'>,
  found: FoundParameter,
): readonly Choice[] {
  const all = choicesHere(of, found);
  const { parameter } = found;
  if (parameter.kind !== 'word' || parameter.choicesFrom !== 'ports') return all;
  const shared = new Set(
    of.craft.board()?.hardware?.ports?.flatMap((port) => (port.sharedWith === undefined ? [] : port.name)),
  );
  const rank = ({ name }: Choice) =>
    (devicesOn(of, name, found.path).length > 0 ? 2 : 0) + (shared.has(name) ? 1 : 0);
  return [...all].sort((one, other) => rank(one) - rank(other));
}

function portChoice({ name, sharedWith, directions }: Port): Choice {
  const shared = sharedWith === undefined ? '' : ` Its pins also serve ${sharedWith}.`;
  return { name, summary: `A serial port of this board${wayOf(directions)}.${shared}` };
}

function wayOf(directions: Port['directions']): string {
  if (directions === undefined) return '';
  if (directions.length > 1) return ', both ways';
  return directions[0] === 'in' ? ', into the board only' : ', out only';
}

/** Other parameters that put something on a port, so that it is not free. */
export function devicesOn(
  { craft, catalog }: Pick<Snapshot, 'craft' | 'catalog'>,
  port: string,
  except: string,
): readonly string[] {
  const pack = craft.packs()[0] ?? null;
  return [...catalog.parameters.values()].flatMap(({ name, parameter }) => {
    if (parameter.kind !== 'word' || parameter.choicesFrom !== 'ports' || name === except) return [];
    const value = craft.setting(name, pack)?.value;
    return value?.kind === 'word' && value.value === port ? [name] : [];
  });
}

/** The places that the craft's layout has; all of them as long as nobody knows the layout. */
function onLayout(craft: Snapshot['craft'], places: readonly Choice[]): readonly Choice[] {
  const layout = craft.setting('craft.layout', null)?.value;
  const known = layout?.kind === 'word' ? motorPlaces(layout.value) : undefined;
  return known === undefined ? places : places.filter(({ name }) => known.includes(name));
}
