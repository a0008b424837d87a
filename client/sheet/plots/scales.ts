import { type ScaleContinuousNumeric, scaleLinear, scaleLog } from 'd3-scale';
import type { PlotAxis } from '../../../server/src/sheet/plots/plot';

export type Scale = ScaleContinuousNumeric<number, number>;

/** From an axis to pixels; what lies beyond its ends is drawn at them. */
export function scaleOf({ low, high, isLogarithmic }: PlotAxis, from: number, to: number): Scale {
  const scale = isLogarithmic ? scaleLog() : scaleLinear();
  return scale.domain([low, high]).range([from, to]).clamp(true);
}

/** Round values along an axis, about as many as are asked for. */
export function ticksOf({ low, high, isLogarithmic }: PlotAxis, count: number): readonly number[] {
  if (!isLogarithmic) return scaleLinear().domain([low, high]).ticks(count);
  const all = scaleLog().domain([low, high]).ticks(count);
  const leading = (value: number) => Number(value.toExponential(0).split('e')[0]);
  return all.filter((value) => [1, 2, 5].includes(leading(value)));
}
