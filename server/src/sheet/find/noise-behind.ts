import { type AxisName, axisNames } from '../../figures/axis-names';
import type { Working } from '../../figures/filter-chain';
import { chainGain, type DigitalFilter } from '../../physics/filter';
import { alongFrequencies } from '../../physics/filter-along';
import { type NoiseSums, noiseSums, powerGains, rmsOf } from '../../physics/random-signal';
import { halfRate } from '../../physics/sampling';
import type { MeasuredNoise } from '../../recording/measured-noise';
import { type Follower, followingGains, meanPowerGain, momentFilters } from './noise-following';

/** What one filter does to the noise that was measured. */
export interface NoisePart {
  /** One for each that was made. */
  readonly number: number;
  /** By how much it turns the power in each bin, in the order of the measured axes. */
  readonly gains: readonly Float64Array[];
  /** The response in each bin, of a filter of the derivative; of those of the gyro the power says all. */
  readonly re: Float64Array;
  readonly im: Float64Array;
  /** What it leaves of each standing tone, a ratio. */
  readonly tones: readonly number[];
}

/** What filters leave of the noise about an axis that was measured before them, deg/s. */
export interface NoiseLeftOn {
  readonly axis: AxisName;
  readonly unfiltered: number;
  readonly left: number;
}

export interface StandingLeft {
  readonly axis: AxisName;
  /** Hz */
  readonly frequency: number;
  /** dB over the noise about it, before the filters. */
  readonly above: number;
  /** dB that the filters leave of it. */
  readonly left: number;
}

/** The measured noise behind a setup's filters. */
export interface NoiseReading {
  /** Hz: beyond it nothing is known. */
  readonly to: number;
  readonly axes: readonly NoiseLeftOn[];
  readonly tones: readonly StandingLeft[];
  /** What it comes to with the gains and the filters of the derivative, where that is most, % of throttle; null without gains. */
  readonly command: number | null;
}

/** Measured noise as setups are tried on it: what a filter does to it is computed once, and a setup is some products. */
export class NoiseBehind {
  /** For each axis of a craft its place among those that were measured; -1: not measured. */
  readonly places: readonly number[];
  private readonly whole: readonly number[];
  private readonly tones: readonly {
    readonly axis: AxisName;
    readonly frequency: number;
    readonly above: number;
  }[];
  /** Room for what is left in each bin. */
  private readonly left: Float64Array;
  private parts = 0;
  private readonly re: Float64Array;
  private readonly im: Float64Array;
  private readonly frequencies: readonly number[];
  /** By their filters: two packs mostly have the same. */
  private readonly gyroParts = new Map<string, NoisePart>();
  private readonly followingParts = new Map<string, NoisePart>();
  private readonly derivativeParts = new Map<string, NoisePart>();
  /** By the numbers of their parts: a search comes by the same ones again and again. */
  private readonly known = new Map<string, readonly NoiseSums[]>();

  constructor(private readonly noise: MeasuredNoise) {
    const { axes, frequencies } = noise;
    this.frequencies = [...frequencies];
    this.places = axisNames.map((name) => axes.findIndex(({ axis }) => axis === name));
    this.whole = axes.map(({ powers }) => rmsOf(powers));
    this.tones = axes.flatMap(({ axis, tones }) => tones.map((tone) => ({ axis, ...tone })));
    this.left = new Float64Array(frequencies.length);
    this.re = new Float64Array(frequencies.length);
    this.im = new Float64Array(frequencies.length);
  }

  /** Of a gyro's filter. One that follows the motors is where they were; without their speeds it is left out. */
  gyroPart(working: Working, follower: Follower): NoisePart {
    if (!working.follows)
      return kept(this.gyroParts, working.all(null), (filters) => this.stillPart(filters));
    const moments = this.noise.moments.map((moment) => momentFilters(working, follower, moment));
    return kept(this.followingParts, moments.flat(), () => ({
      number: this.nextNumber(),
      gains: followingGains(this.noise, moments),
      re: none,
      im: none,
      tones: this.tones.map(({ frequency }) => Math.sqrt(meanPowerGain(moments, frequency))),
    }));
  }

  private stillPart(filters: readonly DigitalFilter[]): NoisePart {
    const [gains = none] = powerGains([{ filters }], this.noise.frequencies);
    return {
      number: this.nextNumber(),
      gains: this.noise.axes.map(() => gains),
      re: none,
      im: none,
      tones: this.tones.map(({ frequency }) => chainGain({ filters }, frequency)),
    };
  }

  private nextNumber(): number {
    this.parts += 1;
    return this.parts;
  }

  /** Of a filter of the derivative; those that follow the motors are left out. */
  derivativePart(working: Working): NoisePart {
    return kept(this.derivativeParts, working.all(null), (filters) => {
      const { re, im } = alongFrequencies(filters, 0, this.frequencies);
      return {
        number: this.nextNumber(),
        gains: [],
        re: Float64Array.from(re),
        im: Float64Array.from(im),
        tones: [],
      };
    });
  }

  /** What the gyro's filters leave about a measured axis, deg/s. */
  private leftOn(place: number, ofGyro: readonly NoisePart[]): number {
    return rmsOf(this.powersLeft(place, ofGyro));
  }

  /** The share of the noise that is left about the axis on which that is most. */
  shareLeft(ofGyro: readonly NoisePart[]): number {
    let most = 0;
    for (const [place, whole] of this.whole.entries())
      if (whole > 0) most = Math.max(most, this.leftOn(place, ofGyro) / whole);
    return most;
  }

  /** From what follows what the noise about each measured axis comes to with any gains, in degrees in place of rad. */
  sums(ofGyro: readonly NoisePart[], ofDerivative: readonly NoisePart[]): readonly NoiseSums[] {
    let key = '';
    for (const { number } of ofGyro) key += `${number} `;
    key += '|';
    for (const { number } of ofDerivative) key += `${number} `;
    const known = this.known.get(key);
    if (known !== undefined) return known;
    const sums = this.sumsOf(ofGyro, ofDerivative);
    this.known.set(key, sums);
    return sums;
  }

  private sumsOf(ofGyro: readonly NoisePart[], ofDerivative: readonly NoisePart[]): readonly NoiseSums[] {
    const { re, im } = this;
    re.fill(1);
    im.fill(0);
    for (const part of ofDerivative) {
      for (let at = 0; at < re.length; at += 1) {
        const [real, imaginary] = [re[at] ?? 1, im[at] ?? 0];
        const [byRe, byIm] = [part.re[at] ?? 1, part.im[at] ?? 0];
        re[at] = real * byRe - imaginary * byIm;
        im[at] = real * byIm + imaginary * byRe;
      }
    }
    return this.whole.map((_, place) =>
      noiseSums(this.noise.frequencies, this.powersLeft(place, ofGyro), { re, im }),
    );
  }

  reading(ofGyro: readonly NoisePart[], command: number | null): NoiseReading {
    return {
      command,
      to: halfRate(this.noise.rate),
      axes: this.noise.axes.map(({ axis }, place) => ({
        axis,
        unfiltered: this.whole[place] ?? 0,
        left: this.leftOn(place, ofGyro),
      })),
      tones: this.tones.map((tone, at) => ({
        ...tone,
        left:
          20 * Math.log10(ofGyro.reduce((gain, part) => gain * (part.tones[at] ?? 1), 1) || Number.MIN_VALUE),
      })),
    };
  }

  private powersLeft(place: number, ofGyro: readonly NoisePart[]): Float64Array {
    const { left } = this;
    left.set(this.noise.axes[place]?.powers ?? left);
    for (const part of ofGyro) {
      const gains = part.gains[place];
      if (gains === undefined) continue;
      for (let at = 0; at < left.length; at += 1) left[at] = (left[at] ?? 0) * (gains[at] ?? 1);
    }
    return left;
  }
}

const none = new Float64Array();

/** What filters make is made once. */
function kept(
  parts: Map<string, NoisePart>,
  filters: readonly DigitalFilter[],
  make: (filters: readonly DigitalFilter[]) => NoisePart,
): NoisePart {
  const key = filters.map(({ rate, b, a }) => [rate, ...b, ...a].join(' ')).join(' ');
  const known = parts.get(key) ?? make(filters);
  parts.set(key, known);
  return known;
}
