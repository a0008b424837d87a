import { chanceLevel } from '../../../physics/chance';
import { leastSquares } from '../../../physics/least-squares';
import { prominenceAt, summitsOf, widthAt } from '../../../physics/peaks';
import { toneBetween } from '../../../physics/tone';
import { independentAverages, toneBandwidth } from '../../../physics/welch';
import type { MeasuredSpan } from '../../report';
import { quantile } from '../span';
import { type LongSpectrum, lowestShaking } from './shaken';

/** A tone of the mean spectrum, whatever makes it. */
export interface Tone {
  readonly frequency: MeasuredSpan;
  /** dB over the median of what lies about it. */
  readonly above: MeasuredSpan;
  /** Hz, at half of its height in dB. */
  readonly width: number;
}

/** What stands out by less is not worth a word: a doubling of its power makes 3 dB. Ours. */
const leastAbove = 4;
/** A hump that is wider than this share of its frequency is no tone. Ours. */
const widest = 0.25;
/** The floor is the median of the bins about, as far as this share of the frequency and at least so many. */
const about = { share: 0.25, bins: 12 };

/** Tones that stand out of the noise by more than chance would have one bin in a hundred thousand do. */
export function tonesOf({ setup, density, segments }: LongSpectrum): readonly Tone[] {
  const decibels = density.map((one) => 10 * Math.log10(Math.max(one, 1e-12)));
  const averages = independentAverages(segments, setup);
  if (averages < 2) return [];
  const least = Math.max(leastAbove, 10 * Math.log10(chanceLevel(averages, 1e-5)));
  const scatter = 10 / Math.LN10 / Math.sqrt(averages);
  const hertz = setup.rate / setup.segment;
  return summitsOf(decibels).flatMap(({ at }) => {
    const frequency = at * hertz;
    const { prominence } = prominenceAt(decibels, at);
    if (frequency < lowestShaking || prominence < least) return [];
    const above = (decibels[at] ?? 0) - floorAt(decibels, at);
    const { from, to } = widthAt(decibels, at, 0.5);
    const width = (to - from) * hertz;
    if (above < least || width > Math.max(widest * frequency, 8 * hertz)) return [];
    const off = Math.hypot(1.645 * scatter, 0.5);
    return [
      {
        frequency: placeOf({ setup, density, decibels, at, scatter }),
        above: { likely: above, low: above - off, high: above + off, unit: 'dB' },
        width,
      },
    ];
  });
}

function floorAt(decibels: Float64Array, at: number): number {
  const reach = Math.max(about.bins, Math.round(about.share * at));
  return quantile(decibels.slice(Math.max(1, at - reach), at + reach + 1), 0.5);
}

interface LinePlace extends Pick<LongSpectrum, 'setup' | 'density'> {
  readonly decibels: Float64Array;
  readonly at: number;
  /** Of one bin, dB. */
  readonly scatter: number;
}

/** Hz: a sharp tone by the ratio of its two highest bins, a wider one by a parabola through its upper part. */
function placeOf({ setup, density, decibels, at, scatter }: LinePlace): MeasuredSpan {
  const hertz = setup.rate / setup.segment;
  const place = (bins: number, off: number) => ({
    likely: bins * hertz,
    low: (bins - off) * hertz,
    high: (bins + off) * hertz,
    unit: 'Hz',
  });
  const upper = upperPart(decibels, at);
  if (upper.to - upper.from < 4) {
    const amplitude = (bin: number) => Math.sqrt(2 * toneBandwidth(setup) * (density[bin] ?? 0));
    return place(at + toneBetween(amplitude(at - 1), amplitude(at), amplitude(at + 1)).offset, 0.5);
  }
  const bins = Array.from({ length: upper.to - upper.from + 1 }, (_, index) => upper.from + index);
  const fit = leastSquares(
    bins.map((bin) => [1, bin - at, (bin - at) ** 2]),
    bins.map((bin) => decibels[bin] ?? 0),
  );
  const [, slope = 0, bend = 0] = fit?.coefficients ?? [];
  const most = (upper.to - upper.from) / 2;
  if (fit === null || bend >= 0) return place(at, most);
  // Bins of a Hann window go partly together, which widens what they leave open by a quarter or so.
  const off = (1.25 * 1.645 * scatter * Math.sqrt(fit.inverse[1]?.[1] ?? 0)) / (-2 * bend);
  return place(
    at + Math.max(-most, Math.min(most, -slope / (2 * bend))),
    Math.hypot(0.5, Math.min(most, off)),
  );
}

/** Down to 6 dB below the top, or to half of the way down. */
function upperPart(decibels: Float64Array, at: number): { readonly from: number; readonly to: number } {
  const { prominence } = prominenceAt(decibels, at);
  const { from, to } = widthAt(decibels, at, Math.min(0.5, 6 / prominence));
  return { from: Math.ceil(from), to: Math.floor(to) };
}
