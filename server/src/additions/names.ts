import { checksOf } from '../catalog/catalog';
import type { Fault } from '../catalog/faults/fault';
import type { Addition } from '../catalog/model/addition';
import type { Bundle } from '../catalog/model/bundle';

/** A name, and what it names, for a look-up and for a sentence: "parameter". */
interface NamedAddition {
  readonly what: string;
  readonly name: string;
}

/** A name that an addition gives, and where it stands in its file. */
interface GivenName extends NamedAddition {
  readonly at: Fault['at'];
}

/** Names that are taken, by what they name, each with who took it, for a sentence. */
export type TakenName = Map<string, string>;

/** The names of the built-in data. */
export function builtInNames(bundle: Bundle): TakenName {
  const taken: TakenName = new Map();
  const take = (what: string, names: readonly string[]) => {
    for (const name of names) taken.set(keyOf({ what, name }), 'built in');
  };
  const parameters = bundle.parameters.flatMap((file) => file.parameters);
  take(
    'parameter',
    parameters.map((one) => one.name),
  );
  for (const one of parameters) {
    if (one.kind !== 'word' && one.kind !== 'words') continue;
    take(
      `choice of ${one.name}`,
      (one.choices ?? []).map(({ name }) => name),
    );
  }
  take(
    'check',
    checksOf(bundle).map(({ id }) => id),
  );
  take(
    'link',
    bundle.links.map(({ name }) => name),
  );
  take(
    'chemistry',
    bundle.chemistries.map(({ name }) => name),
  );
  take(
    'region',
    bundle.regions.map(({ name }) => name),
  );
  return taken;
}

/** Names that are taken already without being said to replace, and replacements of nothing. Takes the others. */
export function nameFaults(addition: Addition, file: string, taken: TakenName): readonly Fault[] {
  const given = namesIn(addition);
  const before = new Map(taken);
  const faults = given.flatMap(({ what, name, at }): readonly Fault[] => {
    const key = keyOf({ what, name });
    const owner = taken.get(key);
    taken.set(key, owner ?? file);
    if (owner === undefined || (addition.replaces.includes(name) && before.has(key))) return [];
    if (!before.has(key)) return [{ at, message: `the ${what} ${name} stands in this file twice` }];
    const where = owner === 'built in' ? 'is built in' : `stands in ${owner} already`;
    return [{ at, message: `the ${what} ${name} ${where}: name it under "replaces" to have yours instead` }];
  });
  return [...faults, ...replacesNothing(addition, given, before)];
}

/** What an addition has in place of something else, as it is named. Takes its names. */
export function namesReplaced(addition: Addition, file: string, taken: TakenName): readonly NamedAddition[] {
  const given = namesIn(addition);
  const replaced = given.filter((one) => taken.has(keyOf(one)) && addition.replaces.includes(one.name));
  for (const one of given) taken.set(keyOf(one), file);
  return replaced;
}

function replacesNothing(
  { replaces }: Addition,
  given: readonly GivenName[],
  before: TakenName,
): readonly Fault[] {
  return replaces.flatMap((name, index) => {
    const at = ['replaces', index];
    const own = given.filter((one) => one.name === name);
    if (own.length === 0) return [{ at, message: `nothing in this file is called ${name}` }];
    return own.some((one) => before.has(keyOf(one)))
      ? []
      : [{ at, message: `there is no ${name} to replace` }];
  });
}

function keyOf({ what, name }: NamedAddition): string {
  return `${what} ${name}`;
}

function namesIn(addition: Addition): readonly GivenName[] {
  const { parameters, choices, checks, links, chemistries, regions } = addition;
  const named = (list: string, what: string, rows: readonly { readonly name: string }[]) =>
    rows.map(({ name }, index): GivenName => ({ what, name, at: [list, index, 'name'] }));
  return [
    ...named('parameters', 'parameter', parameters),
    ...choices.map(
      ({ parameter, name }, index): GivenName => ({
        what: `choice of ${parameter}`,
        name,
        at: ['choices', index, 'name'],
      }),
    ),
    ...checks.map(({ id }, index): GivenName => ({ what: 'check', name: id, at: ['checks', index, 'id'] })),
    ...named('links', 'link', links),
    ...named('chemistries', 'chemistry', chemistries),
    ...named('regions', 'region', regions),
  ];
}
