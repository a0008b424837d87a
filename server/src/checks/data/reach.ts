import type { Catalog } from '../../catalog/catalog';
import type { ExpressionNode } from '../../language/ast';
import {
  anything,
  common,
  type Interval,
  inverse,
  isEmpty,
  negative,
  product,
  single,
  sum,
} from '../../units/interval';
import { toBase } from '../../units/unit';
import type { Condition } from './condition';

type ComparedCondition = Extract<Condition, { kind: 'compare' }>;

/** Narrows what a parameter may hold, by its path. */
type Intervals = Map<string, Interval>;

/**
 * Whether no values within the ranges of the catalogue make all comparisons hold. Where it can't be told, for
 * example because of a figure, they may.
 */
export function neverHold(comparisons: readonly ComparedCondition[], catalog: Catalog): boolean {
  const intervals: Intervals = new Map();
  const valuesOf = (node: ExpressionNode) => reach(node, (path) => intervalOf(path, intervals, catalog));
  for (const comparison of comparisons) {
    narrow(comparison.left, comparison.sign, valuesOf(comparison.right), intervals, catalog);
    narrow(comparison.right, turned[comparison.sign], valuesOf(comparison.left), intervals, catalog);
  }
  return (
    [...intervals.values()].some(isEmpty) ||
    comparisons.some(({ left, sign, right }) => isNever(valuesOf(left), sign, valuesOf(right)))
  );
}

const turned: Readonly<Record<ComparedCondition['sign'], ComparedCondition['sign']>> = {
  '<': '>',
  '<=': '>=',
  '>': '<',
  '>=': '<=',
  '=': '=',
  '!=': '!=',
};

function intervalOf(path: string, intervals: Intervals, catalog: Catalog): Interval {
  return intervals.get(path) ?? catalog.parameter(path)?.range ?? anything;
}

/** A bare parameter on one side can only hold what the other side leaves it. */
function narrow(
  node: ExpressionNode,
  sign: ComparedCondition['sign'],
  by: Interval,
  intervals: Intervals,
  catalog: Catalog,
): void {
  if (node.kind !== 'reference') return;
  const path = node.path.text;
  intervals.set(path, common(intervalOf(path, intervals, catalog), allowed(sign, by)));
}

/** As far apart as two values must be to count as different, in parts of the value; see `holds`. */
const apart = 1e-9;

function allowed(sign: ComparedCondition['sign'], { low, high }: Interval): Interval {
  switch (sign) {
    case '<':
      return { ...anything, high: high - apart * Math.abs(high) };
    case '<=':
      return { ...anything, high };
    case '>':
      return { ...anything, low: low + apart * Math.abs(low) };
    case '>=':
      return { ...anything, low };
    case '=':
      return { low, high };
    case '!=':
      return anything;
  }
}

function isNever(left: Interval, sign: ComparedCondition['sign'], right: Interval): boolean {
  if (isEmpty(left) || isEmpty(right)) return true;
  if (sign === '!=') return left.low === left.high && right.low === right.high && left.low === right.low;
  return isEmpty(common(left, allowed(sign, right)));
}

/** All values that an expression may take. */
function reach(node: ExpressionNode, intervalOf: (path: string) => Interval): Interval {
  const inner = (one: ExpressionNode) => reach(one, intervalOf);
  switch (node.kind) {
    case 'number':
      return single(node.unit === null ? node.value : toBase(node.value, node.unit));
    case 'reference':
      return intervalOf(node.path.text);
    case 'negative':
      return negative(inner(node.of));
    case 'sum':
      return node.terms
        .map(({ sign, node: term }) => (sign === '+' ? inner(term) : negative(inner(term))))
        .reduce(sum);
    case 'product':
      return node.factors
        .map(({ sign, node: factor }) => (sign === '*' ? inner(factor) : inverse(inner(factor))))
        .reduce(product);
    case 'call':
      return called(node.name.text, node.args.map(inner));
  }
}

function called(name: string, args: readonly Interval[]): Interval {
  const lows = args.map(({ low }) => low);
  const highs = args.map(({ high }) => high);
  switch (name) {
    case 'min':
      return { low: Math.min(...lows), high: Math.min(...highs) };
    case 'max':
      return { low: Math.max(...lows), high: Math.max(...highs) };
    case 'sqrt':
      return { low: Math.sqrt(Math.max(0, lows[0] ?? 0)), high: Math.sqrt(Math.max(0, highs[0] ?? 0)) };
    default:
      return anything;
  }
}
