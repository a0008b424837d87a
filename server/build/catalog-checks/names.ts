import type { Bundle } from '../../src/catalog/model/bundle';
import { placedParameters, repeated } from './places';

/** Names: each once, in the file of its group, with the placeholders of the collections it runs through. */
export function nameProblems(bundle: Bundle): readonly string[] {
  const placed = placedParameters(bundle);
  const names = placed.map(({ parameter }) => parameter.name);
  const placeholders = new Map(bundle.collections.map((one) => [one.path, `<${one.placeholder}>`]));
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
    ...placed.flatMap(({ at, parameter }) => placeholderProblems(at, parameter.name, placeholders)),
    ...overlaps(names),
    ...collectionProblems(bundle, names),
  ];
}

function placeholderProblems(
  at: string,
  name: string,
  placeholders: ReadonlyMap<string, string>,
): readonly string[] {
  const words = name.split('.');
  return words.flatMap((word, index) => {
    const expected = placeholders.get(words.slice(0, index).join('.'));
    if (expected !== undefined)
      return word === expected ? [] : [`${at}: expected ${expected} in place of ${word}`];
    return word.startsWith('<') ? [`${at}: ${word} follows no collection`] : [];
  });
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
  // What stands under `own` is told by the board's profile, not by the catalogue.
  const empty = collections
    .filter(({ path }) => path !== 'own' && !names.some((name) => name.startsWith(`${path}.<`)))
    .map(({ path }) => `schemas/collections.json: ${path} has no parameters`);
  return [...paths, ...members, ...empty];
}
