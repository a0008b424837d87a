import type { FoundParameter } from '../catalog/catalog';
import type { ExpressionNode, Problem } from '../language/ast';
import { problem, replacement } from '../language/problem';
import { anything } from '../units/interval';
import { exactText } from '../units/quantity';

/** The bounds of one number, in SI, and how to write a value of it. */
export interface Limits {
  readonly low: number;
  readonly high: number;
  readonly usualLow: number;
  readonly usualHigh: number;
  readonly show: (value: number) => string;
}

/** Binary arithmetic must not push a value over its own limit: `0.1 * 3` is 0.3. */
const slack = 1e-9;

export function quantityLimits(found: FoundParameter, unit: string): Limits {
  const range = found.range ?? anything;
  const usual = found.usual ?? anything;
  return {
    low: range.low,
    high: range.high,
    usualLow: usual.low,
    usualHigh: usual.high,
    show: (value) => exactText(value, unit),
  };
}

/** Reports a value outside its range (must-fix, with the nearest allowed one) or outside what is usual (risk). */
export function checkLimits(value: number, node: ExpressionNode, limits: Limits, problems: Problem[]): void {
  const { low, high, usualLow, usualHigh, show } = limits;
  const margin = slack * Math.max(Math.abs(low), Math.abs(high), Math.abs(value));
  if (value < low - margin || value > high + margin) {
    const nearest = show(value < low ? low : high);
    const values = { given: show(value), low: show(low), high: show(high), nearest };
    problems.push(problem('line/outside-range', node, values, [replacement('Write {to}', node, nearest)]));
    return;
  }
  if (value < usualLow - margin || value > usualHigh + margin) {
    const values = { given: show(value), low: show(usualLow), high: show(usualHigh) };
    problems.push(problem('line/outside-usual', node, values));
  }
}
