import type { Counts } from '../../catalog/model/board-profile';
import type { Parameter } from '../../catalog/model/parameter';
import { parseQuantity } from '../../units/quantity';
import { fromBase, type Unit, unitOf } from '../../units/unit';

/** How a board counts a number. */
export interface Counting {
  readonly unit: string;
  readonly scale: number;
  readonly offset: number;
  /** In the board's own numbers; null: as finely as the text says. */
  readonly grain: number | null;
  readonly low: number;
  readonly high: number;
  readonly limitText: string;
}

const unlimited = { low: Number.NEGATIVE_INFINITY, high: Number.POSITIVE_INFINITY };

/** What a row of a profile says about the numbers of its parameter. The row is free of faults. */
export function countingOf(counts: Counts | undefined, parameter: Parameter): Counting {
  const { unit = unitFor(parameter), scale = 1, offset = 0, step, limits } = counts ?? {};
  const grain = step === undefined ? null : stepIn(step, unitOf(unit)) * Math.abs(scale);
  if (limits === undefined) return { unit, scale, offset, grain, ...unlimited, limitText: '' };
  const [low = unlimited.low, high = unlimited.high] = limits.map(
    (text) => parseQuantity(text)?.value ?? Number.NaN,
  );
  return { unit, scale, offset, grain, low, high, limitText: limits.join(' to ') };
}

/** An SI value in the board's own numbers. */
export function inBoard({ unit, scale, offset }: Counting, base: number): number {
  return fromBase(base, unitOf(unit)) * scale + offset;
}

/** A step in a unit: of temperatures only the difference counts, of decibels the decibels. */
function stepIn(text: string, unit: Unit): number {
  const step = parseQuantity(text);
  if (step === undefined) return Number.NaN;
  if (unit.decibelsAbove !== null) return fromBase(step.value, unit);
  return (step.value - step.unit.offset) / unit.factor;
}

/** The unit that a parameter's numbers are offered in; none for counts. */
export function unitFor(parameter: Parameter): string {
  switch (parameter.kind) {
    case 'quantity':
    case 'range':
      return parameter.unit;
    case 'curve':
      return parameter.up.unit;
    default:
      return '';
  }
}
