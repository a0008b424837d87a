import type { FoundParameter } from '../../catalog/catalog';
import type { CurvePoint, Value } from '../../craft/value';
import { curveValue, monotoneCurve } from '../../physics/monotone-curve';
import { findDimensionName } from '../../units/dimension-names';

/**
 * How far off is what a board holds in the place of a value, as a share of that value: of a range's width, of a
 * curve's height, of all that is usual for a temperature. What can't be a little off is either the same, 0, or
 * another value.
 */
export function altered(given: Value, held: Value, found: FoundParameter): number {
  if (given.kind === 'quantity' && held.kind === 'quantity')
    return shareOf(held.value - given.value, wholeOf(given.value, found));
  if (given.kind === 'range' && held.kind === 'range') {
    const width = given.high - given.low;
    return Math.max(shareOf(held.low - given.low, width), shareOf(held.high - given.high, width));
  }
  if (given.kind === 'curve' && held.kind === 'curve') return alteredCurve(given.points, held.points);
  return JSON.stringify(given) === JSON.stringify(held) ? 0 : Number.POSITIVE_INFINITY;
}

/** Only where the board was told the curve: between its samples it draws its own line. */
function alteredCurve(given: readonly CurvePoint[], held: readonly CurvePoint[]): number {
  const curve = monotoneCurve(given);
  const height = Math.max(...given.map(({ y }) => Math.abs(y)));
  return Math.max(...held.map(({ x, y }) => shareOf(y - curveValue(curve, x), height)));
}

function shareOf(off: number, whole: number): number {
  return off === 0 ? 0 : Math.abs(off / whole);
}

/** Of what is usual, so much is still nothing: 0.4 degrees of tilt that become none are no other tilt. */
const nearNothing = 0.05;

/** What a quantity's share is taken of. A temperature counts from a zero that says nothing about it. */
function wholeOf(value: number, { dimensionName, usual }: FoundParameter): number {
  const width = usual === undefined ? 0 : usual.high - usual.low;
  const isOnScale = findDimensionName(dimensionName ?? '')?.isScale === true;
  return isOnScale ? width : Math.max(Math.abs(value), nearNothing * width);
}
