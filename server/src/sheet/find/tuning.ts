import type { Craft } from '../../craft/craft';
import { CraftView } from '../../craft/view';
import { figureSource } from '../../figures';
import { workingOf } from '../../figures/filter-chain';
import type { ChainName } from '../../figures/filter-stages';
import { type Complex, magnitude, one as passing, times } from '../../physics/complex';
import { controller } from '../../physics/loop';
import { noiseCommand } from '../../physics/random-signal';
import type { MeasuredNoise } from '../../recording/measured-noise';
import { LoopsNear } from './loops-near';
import type { LoopShift } from './measured-loop';
import type { Movable } from './movable';
import { NoiseBehind, type NoisePart, type NoiseReading } from './noise-behind';
import { type FilterPart, nothing, PackTuning, strayed } from './pack-tuning';
import type { Setup, Worth } from './search';

/** What a setup comes to with one pack. */
export interface PackReading {
  readonly pack: string | null;
  /** ms that the filters of the gyro and those of the derivative behind them delay, in the hover. */
  readonly delay: number;
  /**
   * What of the motors' noise reaches them again, as the figures of the axes have it: % of throttle for 1 deg/s. With
   * measured noise: the root of the sum of its square and of that of what the measured noise comes to, % of throttle.
   */
  readonly noise: number;
  /** dB that is left of each tone, by the id of its figure. */
  readonly tones: readonly ToneLeft[];
  /** Null where no noise was measured. */
  readonly measured: NoiseReading | null;
}

interface ToneLeft {
  readonly id: string;
  /** Of the figure. */
  readonly title: string;
  readonly left: number;
}

/**
 * A craft on which setups are tried. What a filter does is asked of the craft's own figures, with its settings written
 * into a copy, and kept: of thousands of setups each is then a few products. Nothing is left out of the figures: delay,
 * tones and noise are those of the sheet, and margins are looked at at every operating point.
 */
export class Tuning {
  private readonly packs: readonly PackTuning[];
  readonly loops: LoopsNear;
  private readonly behind: NoiseBehind | null;

  /** `scratch`: a copy of the craft that is nobody else's. */
  constructor(
    scratch: Craft,
    readonly movables: readonly Movable[],
    packs: readonly (string | null)[],
    measured: MeasuredNoise | null = null,
    shift: LoopShift | null = null,
  ) {
    this.behind = measured === null ? null : new NoiseBehind(measured);
    const room = { scratch, movables, behind: this.behind, shift };
    this.packs = packs.map((pack) => new PackTuning(room, new CraftView(scratch, pack)));
    this.loops = new LoopsNear(this.packs);
  }

  get now(): Setup {
    return this.movables.map(({ now }) => now);
  }

  /** Whether a filter of a chain follows the motors. */
  follows(chain: ChainName): boolean {
    return this.packs.some(({ view, stages }) =>
      stages.some(({ stage }) => stage.chain === chain && workingOf(view, stage)?.value.follows === true),
    );
  }

  /** Whether the motors' tones are known with every pack. */
  get hasTones(): boolean {
    return this.packs.every(({ tones: heard }) => heard.length > 0);
  }

  /**
   * Means over the packs, so that no pack is left to itself, and by how many dB tones are above what may be left. The
   * same as the readings say, in plain numbers: a search asks it thousands of times.
   */
  weigh(setup: Setup, toneLeft: number | null): Worth {
    const weighed = { delay: 0, noise: 0, missed: 0 };
    for (const tuning of this.packs) this.weighWith(tuning, setup, toneLeft, weighed);
    const count = this.packs.length;
    return { delay: weighed.delay / count, noise: weighed.noise / count, missed: weighed.missed };
  }

  readings(setup: Setup): readonly PackReading[] {
    return this.packs.map((tuning) => this.reading(tuning, setup));
  }

  private reading(tuning: PackTuning, setup: Setup): PackReading {
    const { view, stages, speeds, axes } = tuning;
    const parts: FilterPart[] = [];
    const ofGyro: FilterPart[] = [];
    const ofDerivative: FilterPart[] = [];
    for (const stage of stages) {
      const part = tuning.partOf(stage, setup);
      if (part === nothing) continue;
      parts.push(part);
      (stage.isOfGyro ? ofGyro : ofDerivative).push(part);
    }
    const left = tuning.tones.map(({ id }, tone) => {
      let [below, above] = [1, 1];
      for (const part of ofGyro) {
        below *= part.tones[tone]?.[0] ?? 1;
        above *= part.tones[tone]?.[1] ?? 1;
      }
      return {
        id,
        title: figureSource(id)?.title ?? id,
        left: 20 * Math.log10(Math.max(Number.MIN_VALUE, below, above)),
      };
    });
    const heard = speeds.map((speed, at) => ({
      frequency: strayed(speed),
      seen: product(ofGyro, at),
      derived: product(ofDerivative, at),
    }));
    let noise = 0;
    for (const axis of axes) {
      const tone = heard[axis.speed];
      if (tone === undefined) continue;
      const gains = tuning.gainsOf(axis, setup);
      noise = Math.max(noise, magnitude(controller(gains, tone)));
    }
    const loudest = 10 ** (Math.max(-200, ...left.map((one) => one.left)) / 20);
    const of = (some: readonly FilterPart[]) => some.flatMap(({ measured }) => measured ?? []);
    const [gyroNoise, derivativeNoise] = [of(ofGyro), of(ofDerivative)];
    const measured = this.measuredCommand(tuning, setup, gyroNoise, derivativeNoise);
    return {
      pack: view.pack,
      delay: 1e3 * parts.reduce((sum, { delay }) => sum + delay, 0),
      // Without gains: the share of the loudest tone that is left.
      noise:
        axes.length > 0
          ? (100 * Math.hypot(noise, measured) * Math.PI) / 180
          : 100 * Math.hypot(loudest, measured),
      tones: left,
      measured:
        this.behind?.reading(gyroNoise, axes.length > 0 ? (100 * measured * Math.PI) / 180 : null) ?? null,
    };
  }

  private weighWith(
    tuning: PackTuning,
    setup: Setup,
    toneLeft: number | null,
    sum: { delay: number; noise: number; missed: number },
  ): void {
    const { stages, speeds, axes, tones: heard, gyroParts, derivativeParts } = tuning;
    const { gyroNoise, derivativeNoise } = tuning;
    let [gyro, derivative] = [0, 0];
    gyroNoise.length = 0;
    derivativeNoise.length = 0;
    for (const stage of stages) {
      const part = tuning.partOf(stage, setup);
      sum.delay += 1e3 * part.delay;
      if (part.measured !== null) (stage.isOfGyro ? gyroNoise : derivativeNoise).push(part.measured);
      if (stage.isOfGyro) gyroParts[gyro++] = part;
      else derivativeParts[derivative++] = part;
    }
    let loudest = 0;
    for (let tone = 0; tone < heard.length; tone += 1) {
      let [below, above] = [1, 1];
      for (let at = 0; at < gyro; at += 1) {
        const gains = gyroParts[at]?.tones[tone];
        if (gains === undefined) continue;
        below *= gains[0];
        above *= gains[1];
      }
      const gain = Math.max(below, above, Number.MIN_VALUE);
      loudest = Math.max(loudest, gain);
      if (toneLeft !== null) sum.missed += Math.max(0, 20 * Math.log10(gain) - toneLeft);
    }
    let noise = 0;
    let speed = -1;
    let [seen, re, im, pulse] = [1, 1, 0, 1];
    for (const tuned of axes) {
      const { speed: at, placed } = tuned;
      if (at !== speed) {
        speed = at;
        pulse = 2 * Math.PI * strayed(speeds[at] ?? 0);
        seen = 1;
        for (let one = 0; one < gyro; one += 1) seen *= sizeOf(gyroParts[one]?.seen[at]);
        [re, im] = [1, 0];
        for (let one = 0; one < derivative; one += 1) {
          const by = derivativeParts[one]?.seen[at];
          if (by === undefined) continue;
          const across = re * by.im + im * by.re;
          re = re * by.re - im * by.im;
          im = across;
        }
      }
      // `controller` in plain numbers.
      const { proportional, integral, derivative: gain } = placed.axis.gains;
      const braked = tuning.shareOf(tuned.name, setup) * gain * pulse;
      const heldRe = proportional - braked * im;
      const heldIm = braked * re - integral / pulse;
      noise = Math.max(noise, seen * Math.sqrt(heldRe * heldRe + heldIm * heldIm));
    }
    const measured = this.measuredCommand(tuning, setup, gyroNoise, derivativeNoise);
    sum.noise +=
      axes.length > 0
        ? (100 * Math.hypot(noise, measured) * Math.PI) / 180
        : 100 * Math.hypot(loudest, measured);
  }

  /**
   * What the measured noise comes to on the axis and at the place where that is most, beside what a tone of 1 deg/s does:
   * the command; without gains the share that is left. 0 without a measurement.
   */
  private measuredCommand(
    tuning: PackTuning,
    setup: Setup,
    ofGyro: readonly NoisePart[],
    ofDerivative: readonly NoisePart[],
  ): number {
    const { behind } = this;
    if (behind === null) return 0;
    if (tuning.axes.length === 0) return behind.shareLeft(ofGyro);
    const sums = behind.sums(ofGyro, ofDerivative);
    let most = 0;
    for (const axis of tuning.axes) {
      const about = sums[behind.places[axis.name] ?? -1];
      if (about === undefined) continue;
      const gains = tuning.gainsOf(axis, setup);
      most = Math.max(most, noiseCommand(gains, about));
    }
    return most;
  }
}

function sizeOf(value: Complex | undefined): number {
  return value === undefined ? 1 : magnitude(value);
}

function product(parts: readonly FilterPart[], at: number): Complex {
  let all = passing;
  for (const { seen } of parts) all = times(all, seen[at] ?? passing);
  return all;
}
