import type { AxisName } from '../../../figures/axis-names';
import type { Complex } from '../../../physics/complex';
import { type FrequencyResponse, type SizeAndPhase, sizeAndPhase } from '../../../physics/frequency-response';
import type { MeasuredAnswer, ResponseCurve } from '../../report';
import { measuredBy, withheld } from '../span';
import type { AskedSegments } from './asked';

/** How an axis answers what was asked for, where that tells. */
export interface AxisAnswer {
  readonly axis: AxisName;
  readonly asked: AskedSegments;
  readonly response: FrequencyResponse;
  /** Bins that follow from what was asked for, without a wide gap between them. */
  readonly bins: readonly number[];
  readonly curve: SizeAndPhase;
  /** Share of the size, and rad, that each may be off by nine times in ten. */
  readonly off: readonly number[];
}

/** Of a bin with less coherence nothing is told. A common rule in the identification of rotorcraft (from memory). */
const leastCoherence = 0.6;
/**
 * So far apart two coherent bins may lie and still belong to one curve, a share of the frequency, Hz: sticks that come in
 * frames leave out some frequencies, and between any farther the phase could turn round.
 */
const widestGap = { least: 4, share: 0.35, most: 10 };
const fewestBins = 4;

/** A normal deviate lies within so many standard deviations nine times in ten. */
export const ninety = 1.645;

/** The coherent part of a response; withheld where there is too little of it. */
export function answerOf(
  axis: AxisName,
  response: FrequencyResponse,
  asked: AskedSegments,
): AxisAnswer | MeasuredAnswer<never> {
  const bins = coherentBins(response);
  if (bins.length < fewestBins)
    return withheld(
      `What the craft did about ${axis} follows too little from what the sticks asked for: coherence stays below ${leastCoherence}.`,
      'Fly in calm air, with quick steps of the sticks to either side; if it is so then too, confirm the columns.',
    );
  const [lowest = 0] = bins;
  const slowest = { re: response.re[lowest] ?? 0, im: response.im[lowest] ?? 0 };
  if (isOpposite(slowest, response.frequencies[lowest] ?? 0)) return reversed(axis);
  const at = (values: readonly number[]) => bins.map((bin) => values[bin] ?? 0);
  const curve = sizeAndPhase({
    frequencies: at(response.frequencies),
    re: at(response.re),
    im: at(response.im),
  });
  const off = at(response.scatter).map((one) => (ninety * one) / Math.sqrt(asked.averages));
  return { axis, asked, response, bins, curve, off };
}

/** Slow turns come as they are asked for: what is this near to the opposite is a sign, cosine and Hz. Ours. */
const opposite = { cosine: -0.85, slowest: 4 };

/** Whether what comes of a slow call, or their cross spectrum, at a frequency (Hz) is the opposite of it. */
export function isOpposite({ re, im }: Complex, frequency: number): boolean {
  return frequency <= opposite.slowest && re < opposite.cosine * Math.hypot(re, im);
}

/** Of an axis whose gyro or whose sticks count the other way. */
export function reversed(axis: AxisName): MeasuredAnswer<never> {
  return withheld(
    `About ${axis} the gyro turns the other way than the sticks ask for: one of the two columns counts with the other sign.`,
    `Say on the recording’s page, or with --column, which of the columns of ${axis} is reversed: right, nose up and clockwise are more.`,
  );
}

/** From the lowest on, up to the first wide gap. */
export function coherentBins({ frequencies, coherence }: FrequencyResponse): readonly number[] {
  const bins: number[] = [];
  for (let bin = 1; bin < frequencies.length; bin += 1) {
    const last = frequencies[bins.at(-1) ?? 0] ?? 0;
    const gap = (frequencies[bin] ?? 0) - last;
    if (gap > Math.max(widestGap.least, Math.min(widestGap.most, widestGap.share * last))) break;
    if ((coherence[bin] ?? 0) >= leastCoherence) bins.push(bin);
  }
  return bins;
}

export function curveMeasured(answer: AxisAnswer): MeasuredAnswer<ResponseCurve> {
  const { curve, off, bins, response } = answer;
  const rounded = (digits: number) => (value: number) => Number(value.toFixed(digits));
  return measuredBy(
    {
      frequencies: curve.frequencies.map(rounded(3)),
      gain: curve.size.map((size) => rounded(2)(20 * Math.log10(Math.max(size, 1e-6)))),
      phase: curve.phase.map((phase) => rounded(1)((180 / Math.PI) * phase)),
      coherence: bins.map((bin) => rounded(3)(response.coherence[bin] ?? 0)),
      off: off.map(rounded(4)),
    },
    answerBasis(answer),
  );
}

/** What everything that is read off an answer rests on. */
export function answerBasis({ axis, asked, curve, bins, response }: AxisAnswer): string {
  const { setup, starts, moved } = asked;
  const seconds = (starts.length * (setup.segment - setup.overlap)) / setup.rate;
  const mean = bins.reduce((sum, bin) => sum + (response.coherence[bin] ?? 0), 0) / bins.length;
  const [from, to] = [curve.frequencies[0] ?? 0, curve.frequencies.at(-1) ?? 0];
  return `${seconds.toFixed(0)} s in which the sticks asked for ${((180 / Math.PI) * moved).toFixed(0)} deg/s rms about ${axis}; coherence ${mean.toFixed(2)} from ${from.toFixed(1)} to ${to.toFixed(0)} Hz`;
}
