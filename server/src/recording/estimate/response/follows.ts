import { dot, leastSquares, leverage } from '../../../physics/least-squares';
import { fallsBelow, reachesPhase, resonanceOf } from '../../../physics/response-figures';
import type { MeasuredAnswer, MeasuredSpan } from '../../report';
import { give, measuredBy, withheld } from '../span';
import { flySteps } from './fly';
import { type AxisAnswer, answerBasis, ninety } from './response-curve';

/** At the end of the bandwidth so much of what is asked for comes: -3 dB. */
const halfPower = Math.SQRT1_2;
/** A bandwidth whose span reaches farther than such a factor tells nobody anything. Ours. */
const widest = 2;
/** A phase delay is told by phases that reach at least so many times the frequency of half a turn. */
const leastReach = 1.6;
/** A half span of a delay that is wider than this share tells nobody anything. Ours. */
const widestDelay = 0.6;

export function bandwidthOf(answer: AxisAnswer): MeasuredAnswer<MeasuredSpan> {
  const { axis, curve } = answer;
  const [first = 0] = curve.frequencies;
  const raw = fallsBelow(curve, halfPower);
  if (raw === null && (curve.size[0] ?? 1) < halfPower)
    return withheld(
      `Less than 71 % of what was asked for about ${axis} came of all that was flown, from ${first.toFixed(1)} Hz on.`,
      'Confirm the columns; if they are right, the axis hardly follows: look at its gains.',
    );
  const line =
    raw === null ? null : fitAbout(answer, { centre: raw, powers: 2 }, (at) => Math.log(curve.size[at] ?? 1));
  if (raw === null || line === null || !((line.coefficients[1] ?? 0) < 0))
    return beyond(answer, 'is not 3 dB down there');
  const at = (off: number) => raw * Math.exp(solvedFor(line.coefficients, Math.log(halfPower) + off));
  const off = ninety * Math.hypot(line.deviation, quickError * raw);
  const [low, likely, high] = [at(off), at(0), at(-off)];
  if (!(low > likely / widest && high < widest * likely))
    return beyond(answer, 'falls by 3 dB nowhere clearly');
  return measuredBy({ likely, low, high, unit: 'Hz' }, answerBasis(answer));
}

/** Where a parabola that falls at 0 has a value, near there: by Newton's way, a few steps of it. */
function solvedFor([level = 0, slope = 0, bend = 0]: readonly number[], value: number): number {
  let place = 0;
  for (let step = 0; step < 4; step += 1) {
    const falls = Math.min(slope / 2, slope + 2 * bend * place);
    place -= (level + slope * place + bend * place ** 2 - value) / falls;
  }
  return place;
}

export function peakOf(answer: AxisAnswer): MeasuredAnswer<MeasuredSpan> {
  const { axis, curve } = answer;
  const { frequency } = resonanceOf(curve);
  const [first = 0, second = 0] = curve.frequencies;
  const fit =
    frequency <= second
      ? null
      : fitAbout(answer, { centre: frequency, powers: 2 }, (at) => Math.log(curve.size[at] ?? 1));
  const [level = 0, slope = 0, bend = 0] = fit?.coefficients ?? [];
  if (fit === null || !(bend < 0))
    return withheld(
      `The answer about ${axis} has no peak: from ${first.toFixed(1)} Hz on, less comes the quicker it is asked for.`,
      'Nothing is to be done.',
    );
  // The parabola is highest a little beside the highest point.
  const size = 100 * Math.exp(level + Math.min(slope ** 2 / (-4 * bend), 2 * fit.deviation));
  return measuredBy(give(size, size * ninety * fit.deviation, '%'), answerBasis(answer));
}

/**
 * Off a parabola through the phases about where the answer comes half a turn late, and up to twice that frequency: they
 * fall less and less, so that a line through those that are known best says too much.
 */
export function phaseDelayMeasured(answer: AxisAnswer): MeasuredAnswer<MeasuredSpan> {
  const { curve } = answer;
  const half = reachesPhase(curve, -Math.PI);
  const end = curve.frequencies.at(-1) ?? 0;
  if (half === null) return beyond(answer, 'is not half a turn late there');
  if (end < leastReach * half)
    return beyond(answer, `not up to twice the ${half.toFixed(0)} Hz at which it comes half a turn late`);
  const bins = curve.frequencies.flatMap((one, at) => (one >= 0.8 * half && one <= 2 * half ? [at] : []));
  const weights = bins.map((at) => ninety / Math.max(1e-3, answer.off[at] ?? 1));
  const powers = (away: number) => [1, away, away ** 2];
  const fit = leastSquares(
    bins.map((at, index) =>
      powers((curve.frequencies[at] ?? 0) / half - 1).map((one) => one * (weights[index] ?? 0)),
    ),
    bins.map((at, index) => ((curve.phase[at] ?? 0) + Math.PI) * (weights[index] ?? 0)),
  );
  if (fit === null) return beyond(answer, 'is not half a turn late there');
  const twice = powers(1);
  const scatter = Math.sqrt(inflated(fit.residuals, 3) * leverage(fit.inverse, twice));
  // (−φ(2f) − π)/(2π 2f), where φ(f) = −π.
  const late = (phase: number) => (-1000 * phase) / (4 * Math.PI * half);
  const likely = late(dot(fit.coefficients, twice));
  // Sticks and gyro may come from two rows.
  const row = 500 / answer.asked.setup.rate;
  // A row either way is more than nine in ten by itself: beside it chance counts half.
  const off = Math.hypot(late(ninety * scatter), modelError * likely) / 2 + row;
  if (!(off <= widestDelay * likely))
    return beyond(answer, 'scatters too much at twice the frequency of half a turn');
  return measuredBy(give(likely, off, 'ms'), `${answerBasis(answer)}; one row either way is in the span`);
}

function beyond({ axis, curve }: AxisAnswer, where: string): MeasuredAnswer<never> {
  return withheld(
    `The answer about ${axis} is known up to ${(curve.frequencies.at(-1) ?? 0).toFixed(0)} Hz only, and ${where}.`,
    flySteps,
  );
}

/** And the more otherwise the quicker: motors that slow down later than they quicken take some off; a hertz. Of simulated flights. */
const quickError = 0.0025;
/** A craft answers by some percent otherwise with each throttle and each push of air; standard deviation of the size, ours. */
const modelError = 0.035;
/** Neighbouring bins of this window share half: a bin counts for two thirds of one. */
const shared = 1.5;
/** How far about a place a curve is taken for a line or a parabola, as factors of its frequency; more where bins are few. */
const reaches = [1.35, 1.6, 2, 2.7, 4] as const;

interface FitAbout {
  readonly coefficients: readonly number[];
  /** Of the value at the place itself. */
  readonly deviation: number;
}

/** A polynomial along ln(frequency/centre) through the points near a place, weighed by what each may be off. */
export function fitAbout(
  { curve, off }: Pick<AxisAnswer, 'curve' | 'off'>,
  { centre, powers }: { readonly centre: number; readonly powers: 1 | 2 },
  of: (at: number) => number,
): FitAbout | null {
  const away = (at: number) => Math.log((curve.frequencies[at] ?? 0) / centre);
  const within = (reach: number) =>
    [...curve.frequencies.keys()].filter((at) => Math.abs(away(at)) <= Math.log(reach));
  const near = reaches.map(within).find((bins) => bins.length >= powers + 3);
  // A place at the end of what is known is not between points.
  if (near === undefined || !near.some((at) => away(at) > 0) || !near.some((at) => away(at) < 0)) return null;
  const weights = near.map((at) => ninety / Math.max(1e-3, off[at] ?? 1));
  const fit = leastSquares(
    near.map((at, index) =>
      [1, away(at), away(at) ** 2].slice(0, powers + 1).map((one) => one * (weights[index] ?? 0)),
    ),
    near.map((at, index) => of(at) * (weights[index] ?? 0)),
  );
  if (fit === null) return null;
  const deviation = Math.hypot(
    modelError,
    Math.sqrt(inflated(fit.residuals, powers + 1) * (fit.inverse[0]?.[0] ?? 0)),
  );
  return { coefficients: fit.coefficients, deviation };
}

/** What is left over tells whether points scatter by more than chance said. */
function inflated(residuals: readonly number[], coefficients: number): number {
  const rest = residuals.reduce((sum, one) => sum + one ** 2, 0);
  return shared * Math.max(1, rest / Math.max(1, residuals.length - coefficients));
}
