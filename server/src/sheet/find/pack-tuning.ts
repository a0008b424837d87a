import type { Craft } from '../../craft/craft';
import { CraftView } from '../../craft/view';
import { axesOf, type PlacedAxis } from '../../figures/axis';
import { axisNames } from '../../figures/axis-names';
import { type Working, workingOf } from '../../figures/filter-chain';
import { type Harmonic, steeringTone, strays, toneOf } from '../../figures/filter-figures';
import { chainNames, kindOf, type Stage, stagesOf } from '../../figures/filter-stages';
import { loopBandOf } from '../../figures/loop-state';
import { type FlightState, turnsAt } from '../../figures/turning';
import type { Complex } from '../../physics/complex';
import { chainDelay, chainGain, chainResponse, type DigitalFilter } from '../../physics/filter';
import type { ControlPath, Gains } from '../../physics/loop';
import type { Band } from '../../physics/loop-curve';
import { turnsPerSecond } from '../../physics/motor';
import { halfRate } from '../../physics/sampling';
import { type LoopShift, shiftedBy } from './measured-loop';
import { type Movable, write } from './movable';
import type { NoiseBehind, NoisePart } from './noise-behind';
import type { Setup } from './search';

/** The tones whose rest is held, as the figures of their names have it. */
const tones: readonly { readonly id: string; readonly harmonic: Harmonic; readonly state: FlightState }[] = [
  { id: 'hover-tone-left', harmonic: 1, state: 'hover' },
  { id: 'hover-blade-tone-left', harmonic: 'blades', state: 'hover' },
  { id: 'full-tone-left', harmonic: 1, state: 'full' },
  { id: 'full-blade-tone-left', harmonic: 'blades', state: 'full' },
];

/** One filter's part in everything that is asked of a setup. */
export interface FilterPart {
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
export interface StageTuning {
  readonly stage: Stage;
  readonly isOfGyro: boolean;
  /** Places in the list of movables, in the order in which they are written. */
  readonly movedBy: readonly number[];
  /** The one that turns it off; -1: it stays on. */
  readonly switchedBy: number;
  readonly parts: Map<number, FilterPart>;
}

/** An axis at an operating point: which of the names it has, and which of the speeds. */
export interface TunedAxis {
  readonly name: number;
  readonly speed: number;
  readonly placed: PlacedAxis;
}

/** What setups of a craft are tried on. */
export interface TuningRoom {
  /** A copy of the craft that is nobody else's. */
  readonly scratch: Craft;
  readonly movables: readonly Movable[];
  /** Null where no noise was measured. */
  readonly behind: NoiseBehind | null;
  /** Null where no recording tells how the loops really are. */
  readonly shift: LoopShift | null;
}

/** What is computed once for a pack: everything that the movables leave as it is; and what each filter does, kept. */
export class PackTuning {
  readonly stages: readonly StageTuning[];
  /** What is heard of the motors: at so many turns a second, so high. */
  readonly tones: readonly { readonly id: string; readonly turns: number; readonly frequency: number }[];
  /** Turns a second at each operating point. */
  readonly speeds: readonly number[];
  readonly axes: readonly TunedAxis[];
  readonly band: Band | null;
  /** Room for the parts of a setup that is weighed. */
  readonly gyroParts: FilterPart[] = [];
  readonly derivativeParts: FilterPart[] = [];
  readonly gyroNoise: NoisePart[] = [];
  readonly derivativeNoise: NoisePart[] = [];
  /** The movable that turns the derivative gains up and down; -1: none. For each of its values, by how much on each axis. */
  private readonly factor: number;
  private readonly shares: readonly (readonly number[])[];
  /** Turns a second in the hover; null where nothing tells. */
  private readonly hover: number | null;

  constructor(
    private readonly room: TuningRoom,
    readonly view: CraftView,
  ) {
    const { movables, shift } = room;
    const axes = axisNames.flatMap((axis, name) =>
      (axesOf(view, axis)?.value ?? []).map((placed) => ({ name, placed: shiftedBy(shift, axis, placed) })),
    );
    const turns = (placed: PlacedAxis) => turnsPerSecond(placed.point.state.motor.speed);
    const speeds = [...new Set(axes.map(({ placed }) => turns(placed)))];
    this.speeds = speeds;
    this.axes = axes
      .map(({ name, placed }) => ({ name, placed, speed: speeds.indexOf(turns(placed)) }))
      .sort((one, other) => one.speed - other.speed);
    this.stages = stageTunings(view, movables);
    this.tones = heardTones(view);
    this.hover = turnsAt(view, 'hover')?.likely ?? null;
    this.band = loopBandOf(view)?.value ?? null;
    this.factor = movables.findIndex(({ kind, packs }) => kind === 'factor' && packs.includes(view.pack));
    const turning = movables[this.factor];
    this.shares = (turning?.values ?? []).map((_, at) =>
      axisNames.map((axis) => turning?.shareOf?.(at, axis, view.pack) ?? 1),
    );
  }

  /** The gains that an axis has with a setup. */
  gainsOf({ name, placed: { axis } }: TunedAxis, setup: Setup): Gains {
    const share = this.shareOf(name, setup);
    return share === 1 ? axis.gains : { ...axis.gains, derivative: share * axis.gains.derivative };
  }

  /** How much of its derivative gain an axis, by its place among the names, has with a setup. */
  shareOf(name: number, setup: Setup): number {
    // A place of -1 is no place of a list, and slow to look up.
    return this.factor < 0 ? 1 : (this.shares[setup[this.factor] ?? 0]?.[name] ?? 1);
  }

  /** The way of an axis at an operating point with a setup. */
  pathAt({ speed, placed: { axis } }: TunedAxis, setup: Setup): ControlPath {
    const of = (isOfGyro: boolean) =>
      this.stages
        .filter((stage) => stage.isOfGyro === isOfGyro)
        .flatMap((stage) => this.partOf(stage, setup).filters[speed] ?? []);
    return { gyroFilters: of(true), derivativeFilters: of(false), delay: axis.path.delay };
  }

  partOf(stage: StageTuning, setup: Setup): FilterPart {
    if (stage.switchedBy >= 0 && setup[stage.switchedBy] === 0) return nothing;
    let key = 0;
    for (const at of stage.movedBy) key = 1024 * key + (setup[at] ?? 0);
    const known = stage.parts.get(key);
    if (known !== undefined) return known;
    const { movables, scratch } = this.room;
    for (const at of stage.movedBy) write(scratch, movables[at]?.lines(setup[at] ?? 0) ?? []);
    const part = this.newPart(stage);
    stage.parts.set(key, part);
    return part;
  }

  /** As `filter-figures` and `axis` ask it of all filters together. */
  private newPart(stage: StageTuning): FilterPart {
    const view = this.view.anew();
    const working = workingOf(view, stage.stage)?.value;
    if (working === undefined) return nothing;
    const { all, own } = working;
    return {
      delay: chainDelay({ filters: all(this.hover) }, steeringTone),
      tones: this.tones.map(({ turns, frequency }) => {
        const filters = own(turns);
        const gainAt = (share: number) => chainGain({ filters }, share * frequency);
        return [gainAt(1 - strays.usual), gainAt(1 + strays.usual)] as const;
      }),
      seen: this.speeds.map((speed) => {
        const filters = stage.isOfGyro ? own(speed) : all(speed);
        return chainResponse({ filters }, strayed(speed));
      }),
      filters: this.speeds.map((speed) => all(speed)),
      measured: this.noisePart(view, stage, working),
    };
  }

  private noisePart(view: CraftView, { stage, isOfGyro }: StageTuning, working: Working): NoisePart | null {
    const { behind } = this.room;
    if (behind === null) return null;
    if (!isOfGyro) return behind.derivativePart(working);
    const follower = kindOf(view, stage) === 'follow-motors' ? 'each motor' : 'all together';
    return behind.gyroPart(working, follower);
  }
}

/** A motor is never quite where its notch was set. */
export function strayed(speed: number): number {
  return (1 + strays.usual) * speed;
}

/** What a filter does that is off. */
export const nothing: FilterPart = { delay: 0, tones: [], seen: [], filters: [], measured: null };

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

function stageTunings(view: CraftView, movables: readonly Movable[]): readonly StageTuning[] {
  const mine = movables.flatMap((movable, at) =>
    movable.packs.includes(view.pack) ? [{ movable, at }] : [],
  );
  const written = chainNames.flatMap((chain) => stagesOf(view, chain));
  const all = [...written, ...mine.flatMap(({ movable: { stage } }) => stage ?? [])];
  return [...new Map(all.map((stage) => [stage.path, stage])).values()].map((stage) => {
    const movedBy = mine.filter(({ movable }) => movable.stage?.path === stage.path);
    return {
      stage,
      isOfGyro: stage.chain === 'gyro',
      movedBy: movedBy.map(({ at }) => at),
      switchedBy: movedBy.find(({ movable }) => movable.kind === 'switch')?.at ?? -1,
      parts: new Map<number, FilterPart>(),
    };
  });
}

function heardTones(view: CraftView): PackTuning['tones'] {
  const rate = view.quantity('gyro.rate') ?? 0;
  return tones.flatMap(({ id, harmonic, state }) => {
    const [heard, speed] = [toneOf(view, harmonic, state), turnsAt(view, state)];
    if (heard === null || speed === null || heard.likely >= halfRate(rate)) return [];
    return [{ id, turns: speed.likely, frequency: heard.likely }];
  });
}
