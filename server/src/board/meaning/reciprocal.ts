import type { Parameter } from '../../catalog/model/parameter';
import { unitNamed } from './board-units';

/** Some boards show a rate by its period, `loop time 312 us`, and a time by how often it comes. */
const reciprocals: ReadonlyMap<string, string> = new Map([
  ['frequency', 'time'],
  ['time', 'frequency'],
]);

/** The dimension of one over what is measured; null where boards don't count so. */
export function reciprocalOf(dimensionName: string | undefined): string | null {
  return reciprocals.get(dimensionName ?? '') ?? null;
}

/** Whether numbers in a unit are one over what the parameter measures. */
export function isReciprocal(unit: string, parameter: Parameter): boolean {
  const isMeasured = parameter.kind === 'quantity' || parameter.kind === 'range';
  const other = isMeasured ? reciprocalOf(parameter.dimension) : null;
  return other !== null && unitNamed(unit, other) !== null;
}
