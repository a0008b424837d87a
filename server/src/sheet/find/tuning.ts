import type { Craft } from '../../craft/craft';
import { CraftView } from '../../craft/view';
import { figureSource } from '../../figures';
import { axesOf, type PlacedAxis } from '../../figures/axis';
import { axisNames } from '../../figures/axis-names';
import { type Working, workingOf } from '../../figures/filter-chain';
import { type Harmonic, steeringTone, strays, toneOf } from '../../figures/filter-figures';
import { type ChainName, chainNames, kindOf, type Stage, stagesOf } from '../../figures/filter-stages';
import { loopBandOf } from '../../figures/loop-state';
import { type FlightState, turnsAt } from '../../figures/turning';
import { type Complex, magnitude, one as passing, times } from '../../physics/complex';
import { chainDelay, chainGain, chainResponse, type DigitalFilter } from '../../physics/filter';
import { type ControlPath, controller, type Gains } from '../../physics/loop';
import { axisCurve, type Band } from '../../physics/loop-curve';
import { turnsPerSecond } from '../../physics/motor';
import { noiseCommand } from '../../physics/random-signal';
import { halfRate } from '../../physics/sampling';
import { marginsOf, nearly, stabilityOf } from '../../physics/stability';
import type { MeasuredNoise } from '../../recording/measured-noise';
import { type LoopShift, shiftedBy } from './measured-loop';
import { type Movable, write } from './movable';
import { NoiseBehind, type NoisePart, type NoiseReading } from './noise-behind';
import type { Setup, Worth } from './search';
import type { Holds } from './wish';

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

/** The tones whose rest is held, as the figures of their names have it. */
const tones: readonly { readonly id: string; readonly harmonic: Harmonic; readonly state: FlightState }[] = [
  { id: 'hover-tone-left', harmonic: 1, state: 'hover' },
  { id: 'hover-blade-tone-left', harmonic: 'blades', state: 'hover' },
  { id: 'full-tone-left', harmonic: 1, state: 'full' },
  { id: 'full-blade-tone-left', harmonic: 'blades', state: 'full' },
];

/** One filter's part in everything that is asked of a setup. */
interface Part {
  readonly delay: number;
  /** Gain a little below and above each tone. */
  readonly tones: readonly (readonly [number, number])[];
  /** At each speed of the motors: what it makes of one motor's tone, and its filters. */
  readonly seen: readonly Complex[];
  readonly filters: readonly (readonly DigitalFilter[])[];
  /** Null where no noise was measured. */
  readonly measured: NoisePart | null;
}

/** A filter with the movables that it hangs on. */
interface StageTuning {
  readonly stage: Stage;
  readonly isOfGyro: boolean;
  /** Places in the list of movables, in the order in which they are written. */
  readonly movedBy: readonly number[];
  /** The one that turns it off; -1: it stays on. */
  readonly switchedBy: number;
  readonly parts: Map<number, Part>;
}

/** An axis at an operating point: which of the names it has, and which of the speeds. */
interface TunedAxis {
  readonly name: number;
  readonly speed: number;
  readonly placed: PlacedAxis;
}

/** What is computed once for a pack: everything that the movables leave as it is. */
interface PackTuning {
  readonly view: CraftView;
  readonly stages: readonly StageTuning[];
  /** The movable that turns the derivative gains up and down; -1: none. For each of its values, by how much on each axis. */
  readonly factor: number;
  readonly shares: readonly (readonly number[])[];
  /** Turns a second in the hover; null where nothing tells. */
  readonly hover: number | null;
  /** What is heard of the motors: at so many turns a second, so high. */
  readonly tones: readonly { readonly id: string; readonly turns: number; readonly frequency: number }[];
  /** Turns a second at each operating point. */
  readonly speeds: readonly number[];
  readonly axes: readonly TunedAxis[];
  readonly band: Band | null;
  /** Room for the parts of a setup that is weighed. */
  readonly gyroParts: Part[];
  readonly derivativeParts: Part[];
  readonly gyroNoise: NoisePart[];
  readonly derivativeNoise: NoisePart[];
}

/** What falls short of its margins, and where. */
export interface Narrowest {
  readonly pack: string | null;
  readonly place: string;
  /** deg; 0 for a loop that swings. */
  readonly phase: number;
  /** Times; null: no gain makes it swing. */
  readonly gain: number | null;
}

/**
 * A craft on which setups are tried. What a filter does is asked of the craft's own figures, with its settings written
 * into a copy, and kept: of thousands of setups each is then a few products. Nothing is left out of the figures: delay,
 * tones and noise are those of the sheet, and margins are looked at at every operating point.
 */
export class Tuning {
  private readonly packs: readonly PackTuning[];
  /** Loops that were too near to swinging last are looked at first. */
  private readonly loops: { readonly pack: number; readonly axis: number }[];
  private readonly behind: NoiseBehind | null;

  /** `scratch`: a copy of the craft that is nobody else's. */
  constructor(
    private readonly scratch: Craft,
    readonly movables: readonly Movable[],
    packs: readonly (string | null)[],
    measured: MeasuredNoise | null = null,
    shift: LoopShift | null = null,
  ) {
    this.behind = measured === null ? null : new NoiseBehind(measured);
    this.packs = packs.map((pack) => packTuning(new CraftView(scratch, pack), movables, shift));
    this.loops = this.packs.flatMap(({ axes }, pack) => axes.map((_, axis) => ({ pack, axis })));
  }

  get now(): Setup {
    return this.movables.map(({ now }) => now);
  }

  /** Whether anything is known of the axes' loops. */
  get hasLoops(): boolean {
    return this.loops.length > 0;
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

  /** The first loop that comes nearer to swinging than it may; null where all keep clear of it. */
  tooNear(setup: Setup, { phaseMargin, gainMargin }: Holds): Narrowest | null {
    const paths = this.packs.map(() => new Map<number, ControlPath>());
    for (const [at, loop] of this.loops.entries()) {
      const found = this.nearnessOf(setup, loop, paths);
      if (found === null || (found.phase > 0 && isClear(found, phaseMargin ?? 0, gainMargin ?? 1))) continue;
      this.loops.splice(at, 1);
      this.loops.unshift(loop);
      return found;
    }
    return null;
  }

  /** The least phase and the least gain that are left, wherever each is. */
  narrowest(setup: Setup): { readonly phase: Narrowest | null; readonly gain: Narrowest | null } {
    const paths = this.packs.map(() => new Map<number, ControlPath>());
    const all = this.loops.flatMap((loop) => this.nearnessOf(setup, loop, paths) ?? []);
    const byGain = all.filter(({ gain }) => gain !== null);
    return {
      phase: [...all].sort((one, other) => one.phase - other.phase)[0] ?? null,
      gain: byGain.sort((one, other) => (one.gain ?? 0) - (other.gain ?? 0))[0] ?? null,
    };
  }

  /** The least margins with each pack. */
  leastMargins(setup: Setup): ReadonlyMap<string | null, { phase: number; gain: number | null }> {
    const paths = this.packs.map(() => new Map<number, ControlPath>());
    const least = new Map<string | null, { phase: number; gain: number | null }>();
    for (const loop of this.loops) {
      const found = this.nearnessOf(setup, loop, paths);
      if (found === null) continue;
      const known = least.get(found.pack) ?? { phase: found.phase, gain: found.gain };
      known.phase = Math.min(known.phase, found.phase);
      if (found.gain !== null) known.gain = Math.min(known.gain ?? found.gain, found.gain);
      least.set(found.pack, known);
    }
    return least;
  }

  private reading(tuning: PackTuning, setup: Setup): PackReading {
    const { view, stages, speeds, axes } = tuning;
    const parts: Part[] = [];
    const ofGyro: Part[] = [];
    const ofDerivative: Part[] = [];
    for (const stage of stages) {
      const part = this.partOf(tuning, stage, setup);
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
      const gains = turned(axis.placed.axis.gains, shareOf(tuning, setup, axis));
      noise = Math.max(noise, magnitude(controller(gains, tone)));
    }
    const loudest = 10 ** (Math.max(-200, ...left.map((one) => one.left)) / 20);
    const of = (some: readonly Part[]) => some.flatMap(({ measured }) => measured ?? []);
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
      const part = this.partOf(tuning, stage, setup);
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
      const braked = shareOf(tuning, setup, tuned) * gain * pulse;
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
      const gains = turned(axis.placed.axis.gains, shareOf(tuning, setup, axis));
      most = Math.max(most, noiseCommand(gains, about));
    }
    return most;
  }

  private nearnessOf(
    setup: Setup,
    loop: { readonly pack: number; readonly axis: number },
    paths: readonly Map<number, ControlPath>[],
  ): Narrowest | null {
    const tuning = this.packs[loop.pack];
    const placed = tuning?.axes[loop.axis];
    const known = paths[loop.pack];
    if (tuning === undefined || placed === undefined || known === undefined || tuning.band === null)
      return null;
    const path = known.get(placed.speed) ?? this.pathAt(tuning, placed.speed, placed.placed, setup);
    known.set(placed.speed, path);
    const { axis, place } = placed.placed;
    const gains = turned(axis.gains, shareOf(tuning, setup, placed));
    const stability = stabilityOf(axisCurve({ ...axis, path, gains }, tuning.band), nearly);
    const { pack } = tuning.view;
    if (stability.verdict === 'swings') return { pack, place, phase: 0, gain: 1 };
    const margins = marginsOf(stability);
    if (margins === null) return null;
    return { pack, place, phase: (180 / Math.PI) * margins.phaseMargin, gain: margins.gainMargin };
  }

  private pathAt(tuning: PackTuning, speed: number, { axis }: PlacedAxis, setup: Setup): ControlPath {
    const of = (isOfGyro: boolean) =>
      tuning.stages
        .filter((stage) => stage.isOfGyro === isOfGyro)
        .flatMap((stage) => this.partOf(tuning, stage, setup).filters[speed] ?? []);
    return { gyroFilters: of(true), derivativeFilters: of(false), delay: axis.path.delay };
  }

  private partOf(tuning: PackTuning, stage: StageTuning, setup: Setup): Part {
    if (stage.switchedBy >= 0 && setup[stage.switchedBy] === 0) return nothing;
    let key = 0;
    for (const at of stage.movedBy) key = 1024 * key + (setup[at] ?? 0);
    const known = stage.parts.get(key);
    if (known !== undefined) return known;
    for (const at of stage.movedBy) {
      const lines = this.movables[at]?.lines(setup[at] ?? 0) ?? [];
      write(this.scratch, lines);
    }
    const view = tuning.view.anew();
    const working = workingOf(view, stage.stage)?.value;
    const part = partWith(tuning, stage, working, this.noisePart(view, stage, working));
    stage.parts.set(key, part);
    return part;
  }

  private noisePart(
    view: CraftView,
    { stage, isOfGyro }: StageTuning,
    working: Working | undefined,
  ): NoisePart | null {
    if (this.behind === null || working === undefined) return null;
    if (!isOfGyro) return this.behind.derivativePart(working);
    const follower = kindOf(view, stage) === 'follow-motors' ? 'each motor' : 'all together';
    return this.behind.gyroPart(working, follower);
  }
}

/** How much of its derivative gain an axis has. */
function shareOf({ factor, shares }: PackTuning, setup: Setup, { name }: TunedAxis): number {
  // A place of -1 is no place of a list, and slow to look up.
  return factor < 0 ? 1 : (shares[setup[factor] ?? 0]?.[name] ?? 1);
}

function turned(gains: Gains, factor: number): Gains {
  return factor === 1 ? gains : { ...gains, derivative: factor * gains.derivative };
}

/** A motor is never quite where its notch was set. */
function strayed(speed: number): number {
  return (1 + strays.usual) * speed;
}

function isClear({ phase, gain }: Narrowest, phaseMargin: number, gainMargin: number): boolean {
  return phase >= phaseMargin && (gain === null || gain >= gainMargin);
}

function sizeOf(value: Complex | undefined): number {
  return value === undefined ? 1 : magnitude(value);
}

/** What a filter does that is off. */
const nothing: Part = { delay: 0, tones: [], seen: [], filters: [], measured: null };

function product(parts: readonly Part[], at: number): Complex {
  let all = passing;
  for (const { seen } of parts) all = times(all, seen[at] ?? passing);
  return all;
}

/** What a tuning is set up from, asked once with pauses in between: it then only reads it. */
export function* askedForTuning(scratch: Craft, packs: readonly (string | null)[]): Generator<void> {
  for (const pack of packs) {
    const view = new CraftView(scratch, pack);
    for (const state of ['hover', 'full'] as const) {
      turnsAt(view, state);
      yield;
    }
    for (const axis of axisNames) {
      axesOf(view, axis);
      yield;
    }
    loopBandOf(view);
    yield;
  }
}

function packTuning(view: CraftView, movables: readonly Movable[], shift: LoopShift | null): PackTuning {
  const axes = axisNames.flatMap((axis, name) =>
    (axesOf(view, axis)?.value ?? []).map((placed) => ({ name, placed: shiftedBy(shift, axis, placed) })),
  );
  const factor = movables.findIndex(({ kind, packs }) => kind === 'factor' && packs.includes(view.pack));
  const turns = (placed: PlacedAxis) => turnsPerSecond(placed.point.state.motor.speed);
  const speeds = [...new Set(axes.map(({ placed }) => turns(placed)))];
  const rate = view.quantity('gyro.rate') ?? 0;
  const mine = movables.flatMap((movable, at) =>
    movable.packs.includes(view.pack) ? [{ movable, at }] : [],
  );
  const written = chainNames.flatMap((chain) => stagesOf(view, chain));
  const all = [...written, ...mine.flatMap(({ movable: { stage } }) => stage ?? [])];
  const stages = [...new Map(all.map((stage) => [stage.path, stage])).values()].map((stage) => {
    const movedBy = mine.filter(({ movable }) => movable.stage?.path === stage.path);
    return {
      stage,
      isOfGyro: stage.chain === 'gyro',
      movedBy: movedBy.map(({ at }) => at),
      switchedBy: movedBy.find(({ movable }) => movable.kind === 'switch')?.at ?? -1,
      parts: new Map<number, Part>(),
    };
  });
  return {
    view,
    stages,
    factor,
    shares: (movables[factor]?.values ?? []).map((_, at) =>
      axisNames.map((axis) => movables[factor]?.shareOf?.(at, axis, view.pack) ?? 1),
    ),
    hover: turnsAt(view, 'hover')?.likely ?? null,
    tones: tones.flatMap(({ id, harmonic, state }) => {
      const [heard, speed] = [toneOf(view, harmonic, state), turnsAt(view, state)];
      if (heard === null || speed === null || heard.likely >= halfRate(rate)) return [];
      return [{ id, turns: speed.likely, frequency: heard.likely }];
    }),
    speeds,
    axes: axes
      .map(({ name, placed }) => ({ name, placed, speed: speeds.indexOf(turns(placed)) }))
      .sort((one, other) => one.speed - other.speed),
    band: loopBandOf(view)?.value ?? null,
    gyroParts: [],
    derivativeParts: [],
    gyroNoise: [],
    derivativeNoise: [],
  };
}

/** As `filter-figures` and `axis` ask it of all filters together. */
function partWith(
  tuning: PackTuning,
  { isOfGyro }: StageTuning,
  working: Working | undefined,
  measured: NoisePart | null,
): Part {
  if (working === undefined) return nothing;
  const { all, own } = working;
  return {
    delay: chainDelay({ filters: all(tuning.hover) }, steeringTone),
    tones: tuning.tones.map(({ turns, frequency }) => {
      const filters = own(turns);
      const gainAt = (share: number) => chainGain({ filters }, share * frequency);
      return [gainAt(1 - strays.usual), gainAt(1 + strays.usual)] as const;
    }),
    seen: tuning.speeds.map((speed) => {
      const filters = isOfGyro ? own(speed) : all(speed);
      return chainResponse({ filters }, strayed(speed));
    }),
    filters: tuning.speeds.map((speed) => all(speed)),
    measured,
  };
}
