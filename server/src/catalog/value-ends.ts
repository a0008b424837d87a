import type { Interval } from '../units/interval';
import { parseQuantity } from '../units/quantity';
import type { KnownParameter } from './known-parameter';

/** Whether a text holds a number that is an end of what its parameter allows or usually has. */
export function holdsAnEnd({ parameter, range, usual, across }: KnownParameter, text: string): boolean {
  const read = parameter.kind === 'count' ? numberOf : quantityOf;
  // The unit after the upper end serves both.
  const unit = parameter.kind === 'range' ? text.slice(text.lastIndexOf(' ') + 1) : '';
  const ends = [range, usual, across].flatMap((interval) => (interval === undefined ? [] : endsOf(interval)));
  return text
    .split(/->|\.\.|,/)
    .map((part) => part.trim())
    .flatMap((part) => read(/[A-Za-z%]/.test(part) ? part : `${part} ${unit}`.trim()))
    .some((value) => ends.some((end) => isSame(value, end)));
}

function endsOf({ low, high }: Interval): readonly number[] {
  return [low, high];
}

function numberOf(text: string): readonly number[] {
  return /^-?\d+$/.test(text) ? [Number(text)] : [];
}

function quantityOf(text: string): readonly number[] {
  const value = parseQuantity(text)?.value;
  return value === undefined ? [] : [value];
}

/** Two units of one value differ in their last binary digit. */
function isSame(one: number, other: number): boolean {
  return Math.abs(one - other) <= 1e-9 * Math.max(Math.abs(one), Math.abs(other));
}
