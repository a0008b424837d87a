import type { FoundParameter } from '../catalog/catalog';
import type { ParameterOf } from '../catalog/model/parameter';
import type { ExpressionNode, NumberNode, Problem, Span, ValueNode } from '../language/ast';
import { problem, replacement } from '../language/problem';
import { isPlain, sameDimension } from '../units/dimension';
import { type DimensionName, dimensionPhrase, findDimensionName } from '../units/dimension-names';
import { plainNumber } from '../units/number-text';
import { exactText } from '../units/quantity';
import { fromBase, type Unit, unitOf } from '../units/unit';
import { evaluate } from './evaluate';
import { checkLimits, quantityLimits } from './limits';
import { refuseShape, type ValueReading } from './reading';
import type { Evaluated, Value } from './value';

export function isExpression(node: ValueNode): node is ExpressionNode {
  return !['text', 'date', 'range', 'list', 'curve'].includes(node.kind);
}

/** The word that may stand in place of a number, such as `auto`. */
function wordInstead(node: ValueNode, parameter: ParameterOf<'quantity' | 'count'>): Value | null {
  if (node.kind !== 'reference') return null;
  const found = parameter.orWords?.some((word) => word.name === node.path.text) ?? false;
  return found ? { kind: 'word', value: node.path.text } : null;
}

export function interpretQuantity(
  node: ValueNode,
  reading: ValueReading,
  parameter: ParameterOf<'quantity'>,
): Value | null {
  const word = wordInstead(node, parameter);
  if (word !== null) return word;
  if (!isExpression(node)) {
    const example = exampleOf(reading, parameter.unit);
    return refuseShape(node, reading, `${quantityPhrase(parameter.dimension)} such as \`${example}\``);
  }
  const value = measured(node, reading, parameter.dimension, parameter.unit);
  if (value === null) return null;
  checkLimits(value, node, quantityLimits(reading.found, parameter.unit), reading.problems);
  return { kind: 'quantity', value, unit: parameter.unit };
}

function exampleOf({ found }: ValueReading, unit: string): string {
  const low = found.usual?.low ?? 0;
  return exactText(low, unit);
}

function quantityPhrase(dimensionName: string): string {
  return findDimensionName(dimensionName)?.phrase ?? 'a quantity';
}

/** Evaluates an expression that must come to one dimension. In SI; null with a problem otherwise. */
export function measured(
  node: ExpressionNode,
  reading: ValueReading,
  dimensionName: string,
  unit: string,
  bareUnit: Unit | null = null,
): number | null {
  const expected = findDimensionName(dimensionName);
  if (expected === undefined) return null;
  const { value, problem: failed } = evaluate(node, reading.scope, bareUnit);
  if (failed !== null) reading.problems.push(failed);
  if (value === null) return null;
  if (value.kind === 'bare') {
    reading.problems.push(unitMissing(node, value.value, reading, expected, unit));
    return null;
  }
  const shift = expected.isDifference === true ? offsetOf(value, node, bareUnit) : 0;
  const isOther = isOtherFamily(node, expected) || !sameDimension(value.dimension, expected.dimension);
  if (!isOther && shift !== null) return value.value - shift;
  reading.problems.push(wrongDimension(node, value.dimension, expected));
  return null;
}

/** What a temperature counts from, where it stands for a difference; null where it can't: then it was calculated. */
function offsetOf({ kind }: Evaluated, node: ExpressionNode, bareUnit: Unit | null): number | null {
  if (kind !== 'on-scale') return 0;
  return node.kind === 'number' ? ((node.unit ?? bareUnit)?.offset ?? null) : null;
}

/** A discharge rating and a frequency share a dimension, and still one can't stand for the other. */
function isOtherFamily(node: ExpressionNode, expected: DimensionName): boolean {
  if (node.kind !== 'number' || node.unit === null) return false;
  return (
    (node.unit.family ?? undefined) !== expected.family &&
    (node.unit.family !== null || expected.family !== undefined)
  );
}

function wrongDimension(
  node: ExpressionNode,
  given: Parameters<typeof dimensionPhrase>[0],
  expected: DimensionName,
): Problem {
  const written = node.kind === 'number' ? node.unit?.text : undefined;
  const found = written === undefined ? dimensionPhrase(given) : foundPhrase(written, given);
  const fixes =
    node.kind === 'number' && node.unitSpan !== null ? otherUnits(node, node.unitSpan, expected) : [];
  return problem(
    'line/wrong-dimension',
    node,
    { expected: expected.phrase, found, units: expected.units.join(', ') },
    fixes,
  );
}

function foundPhrase(unit: string, given: Parameters<typeof dimensionPhrase>[0]): string {
  if (unit === 'C') return 'a discharge rating (C)';
  return `${dimensionPhrase(given)} (${unit})`;
}

/** Units of the right kind; those that begin like the one written come first: `5 m` may mean `5 min`. */
function otherUnits(node: NumberNode, span: Span, expected: DimensionName) {
  const first = node.unit?.text[0];
  const ranked = [...expected.units].sort(
    (one, other) => Number(other[0] === first) - Number(one[0] === first),
  );
  return ranked.slice(0, 2).map((unit) => replacement(`Write ${node.digits} {to}`, span, unit));
}

/**
 * A bare number: the fix adds the preferred unit, and another one where the size of the number suggests it. A
 * share may have been meant as a fraction of one.
 */
function unitMissing(
  node: ExpressionNode,
  value: number,
  { found }: ValueReading,
  expected: DimensionName,
  preferred: string,
): Problem {
  const likely = expected.units.find((unit) => unit !== preferred && isUsual(value, unit, found.usual));
  const isPreferredUsual = isUsual(value, preferred, found.usual);
  const units = likely === undefined || isPreferredUsual ? [preferred] : [likely, preferred];
  if (isPreferredUsual && likely !== undefined) units.push(likely);
  const digits = node.kind === 'number' ? node.digits : plainNumber(value);
  const written = units.map((unit) => `${digits} ${unit}`);
  const isFraction = isPlain(expected.dimension) && !isPreferredUsual && isUsual(value, '', found.usual);
  const texts = isFraction ? [exactText(value, preferred), ...written] : written;
  const fixes = texts.map((text) => replacement('Write {to}', node, text));
  return problem(
    'line/unit-missing',
    node,
    { expected: expected.phrase, unit: units[0] ?? preferred },
    fixes,
  );
}

function isUsual(value: number, unit: string, usual: FoundParameter['usual']): boolean {
  if (usual === undefined) return false;
  const least = fromBase(usual.low, unitOf(unit));
  const most = fromBase(usual.high, unitOf(unit));
  return value >= least && value <= most;
}

export function interpretCount(
  node: ValueNode,
  reading: ValueReading,
  parameter: ParameterOf<'count'>,
): Value | null {
  const word = wordInstead(node, parameter);
  if (word !== null) return word;
  if (!isExpression(node)) return refuseShape(node, reading, 'a whole number');
  const { value, problem: failed } = evaluate(node, reading.scope);
  if (failed !== null) reading.problems.push(failed);
  if (value === null) return null;
  if (!isPlain(value.dimension) || value.unit !== null) {
    const fixes =
      node.kind === 'number' && node.unitSpan !== null
        ? [replacement('Leave out the unit', { start: node.start + node.digits.length, end: node.end }, '')]
        : [];
    const found = value.unit === '%' ? 'a share (%)' : dimensionPhrase(value.dimension);
    reading.problems.push(problem('line/unit-on-count', node, { found }, fixes));
    return null;
  }
  if (!Number.isInteger(value.value)) {
    const whole = String(Math.round(value.value));
    reading.problems.push(
      problem('line/count-not-whole', node, { given: plainNumber(value.value) }, [
        replacement('Write {to}', node, whole),
      ]),
    );
    return null;
  }
  const [low, high] = parameter.range;
  const [usualLow, usualHigh] = parameter.usual;
  const limits = { low, high, usualLow, usualHigh, show: plainNumber };
  checkLimits(value.value, node, limits, reading.problems);
  return { kind: 'count', value: value.value };
}

/** `[row, column]` on the overlay grid. Whether it lies on the grid depends on the craft's video standard. */
export function interpretPlace(node: ValueNode, reading: ValueReading): Value | null {
  if (node.kind !== 'list' || node.items.length !== 2) {
    return refuseShape(node, reading, 'a place such as `[11, 22]`: row and column');
  }
  const numbers = node.items.map((item) => {
    if (!isExpression(item)) return refuseShape(item, reading, 'a row or column as a whole number');
    const { value, problem: failed } = evaluate(item, reading.scope);
    if (failed !== null) reading.problems.push(failed);
    if (value === null) return null;
    if (isPlain(value.dimension) && value.unit === null && Number.isInteger(value.value) && value.value >= 0)
      return value.value;
    return refuseShape(item, reading, 'a row or column as a whole number from 0 up');
  });
  const [row, column] = numbers;
  if (row === null || column === null || row === undefined || column === undefined) return null;
  return { kind: 'place', row, column };
}
