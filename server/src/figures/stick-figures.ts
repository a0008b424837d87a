import type { CraftView } from '../craft/view';
import { curveSlope, curveValue, type MonotoneCurve, monotoneCurve } from '../physics/monotone-curve';
import { type AxisName, axisNames } from './axis-names';
import type { Computed, FigureSource } from './figure';
import { fine } from './why';

/** deg/s of a value in rad/s. */
const degrees = 180 / Math.PI;

export const stickFigures: readonly FigureSource[] = axisNames.flatMap((axis) => [
  figure(axis, 'centre-slope', 'Slope about the middle', '(deg/s)/%', centreSlope),
  figure(axis, 'end-rate', 'Rate at full stick', 'deg/s', endRate),
  figure(axis, 'step', 'Smallest step of the rate about the middle', 'deg/s', smallestStep),
]);

function figure(
  axis: AxisName,
  what: string,
  title: string,
  unit: string,
  compute: (curve: MonotoneCurve, view: CraftView, axis: AxisName) => Computed | null,
): FigureSource {
  return {
    id: `${axis}-${what}`,
    title: `${title}: ${axis}`,
    unit,
    from: [`stick.${axis}.curve`],
    compute(view) {
      const curve = stickCurve(view, axis);
      return curve === null ? null : compute(curve, view, axis);
    },
  };
}

/** The rate of an axis (rad/s) along its stick; null where its points do not go outwards. */
export function stickCurve(view: CraftView, axis: AxisName): MonotoneCurve | null {
  const points = view.curve(`stick.${axis}.curve`);
  if (points === null || points.length < 2) return null;
  const isRising = points.every(({ x }, index) => index === 0 || x > (points[index - 1]?.x ?? x));
  return isRising ? monotoneCurve(points) : null;
}

function centreSlope(curve: MonotoneCurve): Computed {
  const start = curve.points[0]?.x ?? 0;
  return {
    likely: 0.01 * degrees * curveSlope(curve, start),
    why: 'slope of the monotone cubic at its first point',
  };
}

/** The fastest turn (rad/s) that the stick of an axis can ask for; null where its curve says nothing. */
export function stickEnd(view: CraftView, axis: AxisName): number | null {
  const curve = stickCurve(view, axis);
  return curve === null ? null : endRate(curve, view, axis).likely / degrees;
}

function endRate(curve: MonotoneCurve, view: CraftView, axis: AxisName): Computed {
  const asked = curveValue(curve, 1);
  const limit = view.quantityOr(`stick.${axis}.limit`, null);
  const isLimited = limit !== null && limit < asked;
  const why = isLimited ? `stick.${axis}.limit, below the end of the curve` : 'end of the curve';
  return { likely: degrees * (isLimited ? limit : asked), why };
}

/** A channel of eleven bits over the usual travel counts in steps of half a microsecond or so. */
const channelStep = 0.625e-6;

function smallestStep(curve: MonotoneCurve, view: CraftView): Computed | null {
  const low = view.quantity('receiver.low');
  const high = view.quantity('receiver.high');
  if (low === null || high === null || high <= low) return null;
  const share = channelStep / ((high - low) / 2);
  const slope = curveSlope(curve, curve.points[0]?.x ?? 0);
  return {
    likely: degrees * slope * share,
    why: `${fine(slope, '(deg/s)/%')} × ${fine(channelStep, 'us')} / (${fine(high - low, 'us')} / 2), slope times share of the travel`,
    assumed: ['channels of eleven bits, 0.625 us a step'],
  };
}
