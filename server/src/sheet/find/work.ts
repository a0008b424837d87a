import type { Finding } from '../../checks/report/finding';
import type { Craft } from '../../craft/craft';
import type { MeasuredNoise } from '../../recording/measured-noise';
import type { TradePoint } from './answer';
import type { LoopShift } from './measured-loop';
import type { Movable, MovableLine } from './movable';
import { raisedBy } from './raised';
import type { Setup, Space, Worth } from './search';
import type { TrialCraft } from './trial';
import { Tuning } from './tuning';
import type { Wish } from './wish';

/** What a search works on. */
export class Work {
  readonly tuning: Tuning;
  readonly space: Space;
  private readonly allowed = new Map<string, boolean>();
  /** Of setups by where their movables stand: a search comes by the same ones two times or more. */
  private readonly weighed = new Map<string, Worth>();
  private readonly clear = new Map<string, boolean>();
  /** Whether setups are also held to all checks, which takes longer; only once one has failed them. */
  isStrict = false;

  constructor(
    readonly trial: TrialCraft,
    readonly wish: Wish,
    movables: readonly Movable[],
    private readonly findings: readonly Finding[],
    private readonly check: (craft: Craft) => readonly Finding[],
    /** Lines that every proposal has. */
    readonly voltages: readonly MovableLine[],
    /** A copy of the craft that is nobody else's. */
    scratch: Craft = trial.base.copied(),
    readonly measured: MeasuredNoise | null = null,
    readonly shift: LoopShift | null = null,
  ) {
    this.tuning = new Tuning(scratch, movables, wish.packs, measured, shift);
    this.space = {
      sizes: movables.map(({ values }) => values.length),
      start: this.tuning.now,
      weigh: (setup) => this.weigh(setup),
      isSound: (setup) => this.isSound(setup),
    };
  }

  pointOf(setup: Setup): TradePoint {
    const { delay, noise } = this.space.weigh(setup);
    return { delay, noise };
  }

  /** Whether a setup raises nothing that weighs, by all checks. */
  isAllowed(setup: Setup): boolean {
    const key = setup.join(' ');
    const known = this.allowed.get(key);
    if (known !== undefined) return known;
    const trial = this.trial.with(setupLines(this.tuning.movables, setup));
    const answer = raisedBy(this.findings, this.check(trial)).length === 0;
    this.allowed.set(key, answer);
    return answer;
  }

  private weigh(setup: Setup): Worth {
    const key = setup.join(' ');
    const known = this.weighed.get(key);
    if (known !== undefined) return known;
    const worth = this.tuning.weigh(setup, this.wish.holds.toneLeft);
    this.weighed.set(key, worth);
    return worth;
  }

  private isSound(setup: Setup): boolean {
    return this.isClear(setup) && (!this.isStrict || this.isAllowed(setup));
  }

  private isClear(setup: Setup): boolean {
    const key = setup.join(' ');
    const known = this.clear.get(key);
    if (known !== undefined) return known;
    const isClear = this.tuning.loops.tooNear(setup, this.wish.holds) === null;
    this.clear.set(key, isClear);
    return isClear;
  }
}

/** What a setup writes: of a filter that is off no more than that it is, and nothing that stands so already. */
export function setupLines(movables: readonly Movable[], setup: Setup): readonly MovableLine[] {
  return movables.flatMap((movable, at) => {
    const place = setup[at] ?? movable.now;
    const isOff = movables.some(
      ({ kind, stage, packs }, other) =>
        kind === 'switch' &&
        setup[other] === 0 &&
        stage?.path === movable.stage?.path &&
        stage !== null &&
        packs.some((pack) => movable.packs.includes(pack)),
    );
    const isSwitch = movable.kind === 'switch';
    if (isOff && !isSwitch) return [];
    const wasOff = movables.some(
      ({ kind, stage, now }) => kind === 'switch' && now === 0 && stage?.path === movable.stage?.path,
    );
    return place === movable.now && (isSwitch || !wasOff) ? [] : movable.lines(place);
  });
}
