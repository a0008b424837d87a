import { findDimensionName } from '../../src/units/dimension-names';
import { parseQuantity } from '../../src/units/quantity';
import { parseUnit, type Unit } from '../../src/units/unit';

/** A quantity in SI, or what is wrong with its text. */
export type Read = { readonly value: number; readonly problem?: never } | { readonly problem: string };

/** Reads a quantity that must measure what the name of a dimension says. */
export function readQuantity(text: string, dimensionName: string): Read {
  const found = parseQuantity(text);
  if (found === undefined) return { problem: `"${text}" is not a quantity` };
  const problem = unitProblem(found.unit, text, dimensionName);
  return problem === undefined ? { value: found.value } : { problem };
}

export function unitTextProblem(unit: string, dimensionName: string): string | undefined {
  const found = parseUnit(unit).unit;
  return found === undefined ? `"${unit}" is not a unit` : unitProblem(found, unit, dimensionName);
}

function unitProblem(unit: Unit, text: string, dimensionName: string): string | undefined {
  const name = findDimensionName(dimensionName);
  if (name === undefined) return `"${dimensionName}" is not in the table of dimensions`;
  const fits = unit.dimension.key === name.dimension.key && unit.family === (name.family ?? null);
  if (!fits) return `"${text}" is not ${name.phrase}`;
  if (dimensionName === 'temperature-difference' && unit.offset !== 0) {
    return `"${text}" counts from the freezing point: write a difference in K`;
  }
  return undefined;
}

/** Problems of two ends, and the ends when there are none. */
export function readSpan(
  at: string,
  [low, high]: readonly [string, string],
  dimensionName: string,
  problems: string[],
): readonly [number, number] | undefined {
  const ends = [readQuantity(low, dimensionName), readQuantity(high, dimensionName)];
  for (const { problem } of ends) if (problem !== undefined) problems.push(`${at}: ${problem}`);
  const [one, other] = ends;
  if (one?.problem !== undefined || other?.problem !== undefined || !one || !other) return undefined;
  if (one.value >= other.value) problems.push(`${at}: ${low} to ${high} does not rise`);
  return [one.value, other.value];
}
