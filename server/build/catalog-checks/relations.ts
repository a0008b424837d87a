import type { Bundle } from '../../src/catalog/model/bundle';
import { placedParameters, repeated } from './places';

/** `needs` and `related` lead somewhere, and `related` leads back. */
export function relationProblems(bundle: Bundle): readonly string[] {
  const placed = placedParameters(bundle);
  const related = new Map(placed.map(({ parameter }) => [parameter.name, new Set(parameter.related)]));
  return placed.flatMap(({ at, parameter: { name, needs, related: others } }) => [
    ...references(`${at}.needs`, name, needs, related),
    ...references(`${at}.related`, name, others, related),
    ...others
      .filter((other) => related.get(other)?.has(name) === false)
      .map((other) => `${at}.related: ${other} does not name it in return`),
  ]);
}

function references(
  at: string,
  name: string,
  names: readonly string[],
  known: ReadonlyMap<string, unknown>,
): readonly string[] {
  return [
    ...names.filter((one) => !known.has(one)).map((one) => `${at}: there is no ${one}`),
    ...names.filter((one) => one === name).map(() => `${at}: names itself`),
    ...repeated(names).map((one) => `${at}: names ${one} twice`),
  ];
}
