import type { Bundle } from '../../src/catalog/model/bundle';
import type { Collection } from '../../src/catalog/model/collection';
import { placedParameters, repeated } from './places';

/** Names: each once, in the file of its group, with the placeholders of the collections it runs through. */
export function nameProblems(bundle: Bundle): readonly string[] {
  const placed = placedParameters(bundle);
  const names = placed.map(({ parameter }) => parameter.name);
  const collections = new Map(bundle.collections.map((one) => [one.path, one]));
  const inGroup = placed
    .filter(({ group, parameter }) => !parameter.name.startsWith(`${group}.`))
    .map(({ at, group }) => `${at}: must begin with "${group}."`);
  return [
    ...repeated(names).map((name) => `${name}: stands in the catalogue twice`),
    ...repeated(bundle.parameters.map(({ group }) => group)).map(
      (group) => `${group}: two files have this group`,
    ),
    ...repeated(placed.map(({ parameter }) => parameter.title)).map(
      (title) => `"${title}": two parameters have this title`,
    ),
    ...inGroup,
    ...placed.flatMap(({ at, parameter }) =>
      parameter.kind === 'bare' ? [] : placeholderProblems(at, parameter.name, collections),
    ),
    ...placed.flatMap(({ at, parameter }) =>
      'choices' in parameter ? tornParts(at, parameter.choices ?? []) : [],
    ),
    ...overlaps(names),
    ...collectionProblems(bundle, names),
  ];
}

function placeholderProblems(
  at: string,
  name: string,
  collections: ReadonlyMap<string, Collection>,
): readonly string[] {
  const words = name.split('.');
  return words.flatMap((word, index) => {
    const collection = collections.get(words.slice(0, index).join('.'));
    if (collection === undefined) return word.startsWith('<') ? [`${at}: ${word} follows no collection`] : [];
    const expected = `<${collection.placeholder}>`;
    return word === expected || isClosedMember(collection, word)
      ? []
      : [`${at}: expected ${expected} in place of ${word}`];
  });
}

/** A member of a closed collection may have settings of its own: `control.when.fast-turn.from`. */
function isClosedMember({ keys }: Collection, word: string): boolean {
  return keys.kind === 'closed' && keys.members.some(({ name }) => name === word);
}

/** A name that is a setting cannot be a section as well. */
function overlaps(names: readonly string[]): readonly string[] {
  const sorted = [...names].sort();
  return sorted.flatMap((name) => {
    const inside = sorted.find((other) => other.startsWith(`${name}.`));
    return inside === undefined ? [] : [`${name}: is a setting and cannot hold ${inside}`];
  });
}

function collectionProblems(bundle: Bundle, names: readonly string[]): readonly string[] {
  const { collections } = bundle;
  const paths = repeated(collections.map(({ path }) => path)).map(
    (path) => `${path}: two collections have this path`,
  );
  const members = collections.flatMap(({ path, keys }) =>
    keys.kind === 'closed'
      ? repeated(keys.members.map(({ name }) => name)).map(
          (name) => `${path}.${name}: stands in its collection twice`,
        )
      : [],
  );
  const empty = collections
    .filter(({ path }) => !names.some((name) => name.startsWith(`${path}.<`)))
    .map(({ path }) => `schemas/collections.json: ${path} has no parameters`);
  return [...paths, ...members, ...empty, ...collections.flatMap((one) => memberProblems(one, names))];
}

/** What is told of members by themselves: settings of their own, those that mean nothing, the parts they stand in. */
function memberProblems(
  { path, placeholder, keys }: Collection,
  names: readonly string[],
): readonly string[] {
  if (keys.kind !== 'closed') return [];
  const under = (key: string) =>
    names.flatMap((name) =>
      name.startsWith(`${path}.${key}.`) ? [name.slice(path.length + key.length + 2)] : [],
    );
  const shared = under(`<${placeholder}>`);
  const own = new Map(keys.members.map(({ name }) => [name, under(name)]));
  const twice = [...own].flatMap(([member, settings]) =>
    settings
      .filter((setting) => shared.includes(setting))
      .map((setting) => `${path}.${member}.${setting}: every ${placeholder} has it already`),
  );
  const without = keys.members.flatMap(({ name, without: missing = [] }) =>
    missing.flatMap(({ setting }) => {
      if (own.get(name)?.includes(setting) === true)
        return [`${path}.${name}: both has and lacks ${setting}`];
      const isKnown = shared.includes(setting) || [...own.values()].some((some) => some.includes(setting));
      return isKnown ? [] : [`${path}.${name}: lacks ${setting}, which no ${placeholder} has`];
    }),
  );
  return [...twice, ...without, ...tornParts(path, keys.members)];
}

/** What is told in parts is told so to its end, and what belongs to one question stands together. */
function tornParts(at: string, list: readonly { readonly part?: string | undefined }[]): readonly string[] {
  const parts = list.map(({ part }) => part ?? 'no part');
  const torn = repeated(parts.filter((part, index) => part !== parts[index - 1]));
  const half = parts.includes('no part') && new Set(parts).size > 1;
  return [
    ...torn.map((part) => `${at}: those of "${part}" stand apart`),
    ...(half ? [`${at}: some stand in no part`] : []),
  ];
}
