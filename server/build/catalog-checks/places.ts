import { type Fault, placeText } from '../../src/catalog/faults/fault';
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

export { repeated } from '../../src/catalog/faults/fault';

/** Faults of a piece of data as lines about its file. */
export function asLines(at: string, faults: readonly Fault[]): readonly string[] {
  return faults.map((fault) => `${at}${placeText(fault)}: ${fault.message}`);
}
