import type { Bundle } from '../../src/catalog/model/bundle';
import type { Parameter } from '../../src/catalog/model/parameter';

/** A parameter with the words that open a line about it: its file and its name. */
export interface Placed {
  readonly at: string;
  readonly group: string;
  readonly parameter: Parameter;
}

export function placedParameters(bundle: Bundle): readonly Placed[] {
  return bundle.parameters.flatMap(({ group, parameters }) =>
    parameters.map((parameter) => ({
      at: `schemas/parameters/${group}.json: ${parameter.name}`,
      group,
      parameter,
    })),
  );
}

/** What stands more than once in a list. */
export function repeated(list: readonly string[]): readonly string[] {
  const seen = new Set<string>();
  return [...new Set(list.filter((text) => seen.has(text) || !seen.add(text)))];
}
