import type { Dimension } from './dimension';
import { findDimensionName } from './dimension-names';
import { plainNumber, shortNumber } from './number-text';
import { fromBase, parseUnit, toBase, type Unit, unitOf } from './unit';

/** A value in SI with its dimension. */
export interface Quantity {
  readonly value: number;
  readonly dimension: Dimension;
}

export function quantity(value: number, unit: string | Unit): Quantity {
  const found = typeof unit === 'string' ? unitOf(unit) : unit;
  return { value: toBase(value, found), dimension: found.dimension };
}

/** Writes an SI value exactly as a script would: `120 Hz`. A per cent keeps its space as every unit does. */
export function exactText(base: number, unit: string): string {
  const number = plainNumber(fromBase(base, unitOf(unit)));
  return unit === '' ? number : `${number} ${unit}`;
}

/** Writes an SI value for people, with few digits: 3 significant ones unless told otherwise. */
export function shortText(base: number, unit: string, significant?: number): string {
  const number = shortNumber(fromBase(base, unitOf(unit)), significant);
  return unit === '' ? number : `${number} ${unit}`;
}

const quantityPattern = /^([+-]?(?:\d+(?:\.\d+)?|\.\d+)(?:[eE][+-]?\d+)?)\s*([^\s\d.]\S*|)$/;

/** Reads a quantity in catalogue data: a number and a unit. Undefined when the text is neither. */
export function parseQuantity(text: string): (Quantity & { readonly unit: Unit }) | undefined {
  const match = quantityPattern.exec(text.trim());
  if (match === null) return undefined;
  const { unit } = parseUnit(match[2] ?? '');
  return unit && { value: toBase(Number(match[1]), unit), dimension: unit.dimension, unit };
}

/**
 * The unit among those usual for a dimension in which a value reads best: the number lies between 1 and
 * 1000 if one allows it. The first usual unit otherwise.
 */
export function readableUnit(base: number, dimensionName: string): string {
  const units = findDimensionName(dimensionName)?.units ?? [''];
  const good = units.find((unit) => {
    const shown = Math.abs(fromBase(base, unitOf(unit)));
    return shown >= 1 && shown < 1000;
  });
  return good ?? units[0] ?? '';
}
