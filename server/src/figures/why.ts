import { shortText } from '../units/quantity';

/** An SI value in a unit for a formula: with a digit more than people need, so that the formula comes to its figure. */
export function fine(value: number, unit: string): string {
  return shortText(value, unit, 4);
}
