import { findDimensionName } from '../../units/dimension-names';
import { parseQuantity } from '../../units/quantity';
import { parseUnit, type Unit } from '../../units/unit';
import type { Fault } from './fault';

/** A quantity in SI, or what is wrong with its text. */
export type ReadQuantity =
  | { readonly value: number; readonly problem?: never }
  | { readonly value?: never; readonly problem: string };

export type Ends = readonly [low: number, high: number];

/** Reads a quantity that must measure what the name of a dimension says. */
export function readQuantity(text: string, dimensionName: string): ReadQuantity {
  const found = parseQuantity(text);
  if (found === undefined) return { problem: `"${text}" is not a quantity` };
  const problem = unitProblem(found.unit, text, dimensionName);
  if (problem !== undefined) return { problem };
  return Number.isFinite(found.value) ? { value: found.value } : { problem: `"${text}" is no finite number` };
}

/** Faults of a quantity; none for one that may be absent and is. */
export function quantityFaults(
  at: Fault['at'],
  text: string | null | undefined,
  dimensionName: string,
): readonly Fault[] {
  const message = text == null ? undefined : readQuantity(text, dimensionName).problem;
  return message === undefined ? [] : [{ at, message }];
}

export function unitFaults(at: Fault['at'], unit: string, dimensionName: string): readonly Fault[] {
  const found = parseUnit(unit).unit;
  const message = found === undefined ? `"${unit}" is not a unit` : unitProblem(found, unit, dimensionName);
  return message === undefined ? [] : [{ at, message }];
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

/** Two ends that must rise; undefined where one of them can't be read. */
export function readInterval(
  at: Fault['at'],
  [low, high]: readonly [string, string],
  dimensionName: string,
): { readonly ends?: Ends; readonly faults: readonly Fault[] } {
  const [one, other] = [readQuantity(low, dimensionName), readQuantity(high, dimensionName)];
  const faults = [one, other].flatMap(({ problem }, index) =>
    problem === undefined ? [] : [{ at: [...at, index], message: problem }],
  );
  if (one.problem !== undefined || other.problem !== undefined) return { faults };
  if (one.value >= other.value) faults.push({ at: [...at], message: `${low} to ${high} does not rise` });
  return { ends: [one.value, other.value], faults };
}
