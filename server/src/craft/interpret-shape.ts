import type { ParameterOf } from '../catalog/model/parameter';
import type { ExpressionNode, ValueNode } from '../language/ast';
import { problem, replacement } from '../language/problem';
import { exactText, parseQuantity } from '../units/quantity';
import type { Unit } from '../units/unit';
import { measured } from './interpret-number';
import { checkLimits, quantityLimits } from './limits';
import { refuseShape, type ValueReading } from './reading';
import type { CurvePoint, Value } from './value';
import { rangeText } from './value-text';

/** `1750..2050 us`. A unit after the upper end serves both. */
export function interpretRange(
  node: ValueNode,
  reading: ValueReading,
  parameter: ParameterOf<'range'>,
): Value | null {
  if (node.kind !== 'range') {
    return refuseShape(
      node,
      reading,
      `a range such as \`${parameter.usual[0].split(' ')[0]}..${parameter.usual[1]}\``,
    );
  }
  const shared = unitAtEnd(node.high);
  const high = measured(node.high, reading, parameter.dimension, parameter.unit);
  if (high === null && node.low.kind === 'number' && node.low.unit === null) return null;
  const low = measured(node.low, reading, parameter.dimension, parameter.unit, shared);
  if (low === null || high === null) return null;
  const limits = quantityLimits(reading.found, parameter.unit);
  checkLimits(low, node.low, limits, reading.problems);
  checkLimits(high, node.high, limits, reading.problems);
  if (low >= high) {
    const swapped = rangeText(high, low, parameter.unit);
    const values = { low: exactText(low, parameter.unit), high: exactText(high, parameter.unit) };
    const fixes = low > high ? [replacement('Write {to}', node, swapped)] : [];
    reading.problems.push(problem('line/range-reversed', node, values, fixes));
    return null;
  }
  return { kind: 'range', low, high, unit: parameter.unit };
}

function unitAtEnd(node: ExpressionNode): Unit | null {
  return node.kind === 'number' ? node.unit : null;
}

/** `0 % -> 0 deg/s, 50 % -> 170 deg/s`: rising from point to point. */
export function interpretCurve(
  node: ValueNode,
  reading: ValueReading,
  parameter: ParameterOf<'curve'>,
): Value | null {
  if (node.kind !== 'curve' || node.points.length < 2) {
    const { across, up } = parameter;
    return refuseShape(
      node,
      reading,
      `a curve such as \`${across.range[0]} -> ${up.usual[0]}, ${across.range[1]} -> ${up.usual[1]}\``,
    );
  }
  const points: CurvePoint[] = [];
  let isWhole = true;
  for (const point of node.points) {
    const x = measured(point.x, reading, parameter.across.dimension, parameter.across.unit);
    const y = measured(point.y, reading, parameter.up.dimension, parameter.up.unit);
    if (x === null || y === null) {
      isWhole = false;
      continue;
    }
    checkLimits(x, point.x, axisLimits(parameter.across), reading.problems);
    checkLimits(y, point.y, axisLimits(parameter.up), reading.problems);
    const before = points.at(-1);
    if (before !== undefined && (x <= before.x || y < before.y)) {
      const span = { start: point.x.start, end: point.y.end };
      const axis = x <= before.x ? parameter.across : parameter.up;
      const [value, last] = x <= before.x ? [x, before.x] : [y, before.y];
      const values = { given: exactText(value, axis.unit), before: exactText(last, axis.unit) };
      reading.problems.push(problem('line/curve-not-rising', span, values));
      isWhole = false;
    }
    points.push({ x, y });
  }
  return isWhole ? { kind: 'curve', points } : null;
}

function axisLimits({
  unit,
  range,
  usual = range,
}: {
  unit: string;
  range: [string, string];
  usual?: [string, string];
}) {
  const of = (text: string) => parseQuantity(text)?.value ?? 0;
  return {
    low: of(range[0]),
    high: of(range[1]),
    usualLow: of(usual[0]),
    usualHigh: of(usual[1]),
    show: (value: number) => exactText(value, unit),
  };
}
