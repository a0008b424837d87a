import type { CallNode, ExpressionNode, Problem, ReferenceNode } from '../language/ast';
import { isOwnPath } from '../language/path-text';
import { type LateSuggestion, lateProblem, problem, replacement } from '../language/problem';
import { divided, isPlain, multiplied, plain, raised } from '../units/dimension';
import { toBase, type Unit } from '../units/unit';
import { functions } from './functions';
import type { Scope } from './scope';
import { unlikeSum } from './unlike-sum';
import { type Evaluated, type NumberKind, numberKind } from './value';

/** Thrown inside this file's evaluation to leave it with a problem; `null`: reported elsewhere already. */
class EvaluationFault {
  constructor(readonly problem: Problem | null) {}
}

export interface EvaluationResult {
  /** null: could not be evaluated. */
  readonly value: Evaluated | null;
  readonly problem: Problem | null;
}

/**
 * Evaluates an expression in SI with its dimension. `bareUnit`: the unit of a number that has none, as at
 * the lower end of a range.
 */
export function evaluate(node: ExpressionNode, scope: Scope, bareUnit: Unit | null = null): EvaluationResult {
  try {
    const value = evaluated(node, scope, bareUnit);
    if (!Number.isFinite(value.value)) throw fault('line/no-finite-value', node);
    return { value, problem: null };
  } catch (caught) {
    if (caught instanceof EvaluationFault) return { value: null, problem: caught.problem };
    throw caught;
  }
}

function fault(
  id: string,
  node: { start: number; end: number },
  values: Record<string, string> = {},
): EvaluationFault {
  return new EvaluationFault(problem(id, node, values));
}

function evaluated(node: ExpressionNode, scope: Scope, bareUnit: Unit | null): Evaluated {
  switch (node.kind) {
    case 'number': {
      const unit = node.unit ?? bareUnit;
      if (unit === null) return { value: node.value, dimension: plain, unit: null, kind: 'bare' };
      const { dimension, text } = unit;
      return { value: toBase(node.value, unit), dimension, unit: text, kind: numberKind(unit) };
    }
    case 'reference':
      return referenced(node, scope);
    case 'negative': {
      const of = inner(node.of, scope);
      refuseTemperature(of, node.of, 'turned into its negative');
      return { ...of, value: -of.value, unit: null };
    }
    case 'sum': {
      const terms = node.terms.map(({ sign, node: term }) => ({
        sign,
        node: term,
        value: inner(term, scope),
      }));
      refuseUnlike(terms);
      return terms.reduce(added).value;
    }
    case 'product':
      return node.factors
        .map(({ sign, node: factor }) => ({ sign, factor, value: inner(factor, scope) }))
        .reduce(times).value;
    case 'call':
      return called(node, scope);
  }
}

/** A part of a larger expression: a level in decibels makes no sense there. */
function inner(node: ExpressionNode, scope: Scope): Evaluated {
  const value = evaluated(node, scope, null);
  if (value.kind === 'level') throw fault('line/unit-in-product', node, { unit: value.unit ?? 'dB' });
  return value;
}

function refuseUnlike(parts: Parameters<typeof unlikeSum>[0]): void {
  const unlike = unlikeSum(parts);
  if (unlike !== null) throw new EvaluationFault(unlike);
}

/** A temperature can be shifted and no more: twice 20 degC is 40 degC on one scale and 313 degC on another. */
function refuseTemperature({ kind }: Evaluated, node: ExpressionNode, done: string): void {
  if (kind === 'on-scale') throw fault('line/temperature-calculated', node, { done });
}

function referenced(node: ReferenceNode, scope: Scope): Evaluated {
  const { text } = node.path;
  if (isOwnPath(text)) throw fault('line/own-referred', node, { name: text });
  const isParameter = text.includes('.');
  const found = isParameter ? scope.parameter(text) : scope.constant(text);
  switch (found.kind) {
    case 'value':
      return found.value;
    case 'unknown-value':
      throw new EvaluationFault(null);
    case 'circle':
      throw fault('line/circular', node, { name: text, through: found.through.join(' → ') });
    case 'too-deep':
      throw fault('line/names-too-deep', node, { name: text, deepest: String(found.deepest) });
    case 'not-a-quantity':
      throw fault('line/not-a-quantity', node, { name: text });
    case 'missing': {
      const id = isParameter ? 'line/reference-not-set' : 'line/unknown-constant';
      throw new EvaluationFault(lateProblem(id, node, { name: text }, () => suggested(node, found.near())));
    }
  }
}

function suggested(node: ReferenceNode, near: readonly string[]): LateSuggestion {
  return { suggestion: near.join(', '), fixes: near.map((name) => replacement('Write {to}', node, name)) };
}

interface EvaluatedTerm {
  readonly sign: '+' | '-';
  readonly node: ExpressionNode;
  readonly value: Evaluated;
}

function added(sum: EvaluatedTerm, next: EvaluatedTerm): EvaluatedTerm {
  const value = sum.value.value + (next.sign === '+' ? next.value.value : -next.value.value);
  if (next.value.kind === 'on-scale') return { ...sum, value: { ...withTemperature(sum, next), value } };
  const kind =
    sum.value.kind === next.value.kind || sum.value.kind === 'on-scale' ? sum.value.kind : 'quantity';
  return { ...sum, value: { ...sum.value, value, kind } };
}

/** A sum whose next term is a temperature: one that is shifted, or how far two are apart. */
function withTemperature(sum: EvaluatedTerm, next: EvaluatedTerm): Evaluated {
  if (sum.value.kind === 'on-scale') {
    if (next.sign === '-') return { ...next.value, unit: 'K', kind: 'quantity' };
    throw fault('line/temperature-calculated', next.node, { done: 'added to another temperature' });
  }
  if (next.sign === '+') return next.value;
  throw fault('line/temperature-calculated', next.node, { done: 'taken away from a difference' });
}

interface EvaluatedFactor {
  readonly sign: '*' | '/';
  readonly factor: ExpressionNode;
  readonly value: Evaluated;
}

function times(product: EvaluatedFactor, next: EvaluatedFactor): EvaluatedFactor {
  const one = product.value;
  const other = next.value;
  refuseTemperature(one, product.factor, 'multiplied or divided');
  refuseTemperature(other, next.factor, 'multiplied or divided');
  const kind = one.kind === 'bare' && other.kind === 'bare' ? 'bare' : 'quantity';
  if (next.sign === '*') {
    // A quantity times a plain number keeps the unit it was written in.
    const unit = isPlain(other.dimension) ? one.unit : isPlain(one.dimension) ? other.unit : null;
    const dimension = multiplied(one.dimension, other.dimension);
    return { ...product, value: { value: one.value * other.value, dimension, unit, kind } };
  }
  if (other.value === 0) throw fault('line/divided-by-zero', next.factor);
  const unit = isPlain(other.dimension) ? one.unit : null;
  const dimension = divided(one.dimension, other.dimension);
  return { ...product, value: { value: one.value / other.value, dimension, unit, kind } };
}

function called(node: CallNode, scope: Scope): Evaluated {
  const found = functions.get(node.name.text);
  if (found === undefined) {
    throw fault('line/unknown-function', node.name, {
      name: node.name.text,
      known: [...functions.keys()].join(', '),
    });
  }
  const args = node.args.map((argument) => inner(argument, scope));
  const [first] = args;
  if (first === undefined || args.length < found.fewest || args.length > found.most) {
    throw fault('line/wrong-arguments', node, { name: node.name.text, takes: found.takes });
  }
  refuseUnlike(args.map((value, index) => ({ node: node.args[index] ?? node, value })));
  for (const [index, argument] of args.entries()) {
    if (!found.choosesOne) refuseTemperature(argument, node.args[index] ?? node, `used in ${node.name.text}`);
  }
  if (node.name.text === 'round' && args.length === 1 && !isPlain(first.dimension)) {
    throw fault('line/wrong-arguments', node, {
      name: 'round',
      takes: 'a quantity and the step to round it to',
    });
  }
  const value = found.apply(args.map((argument) => argument.value));
  const dimension = node.name.text === 'sqrt' ? raised(first.dimension, 0.5) : first.dimension;
  const kind = kindOfAll(args);
  return { value, dimension, unit: node.name.text === 'sqrt' ? null : first.unit, kind };
}

function kindOfAll(args: readonly Evaluated[]): NumberKind {
  if (args.some(({ kind }) => kind === 'on-scale')) return 'on-scale';
  return args.every(({ kind }) => kind === 'bare') ? 'bare' : 'quantity';
}
