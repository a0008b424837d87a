import { chainGain, chainPhase, type DigitalFilter, firstOrderLowpass } from './filter';
import type { Axis, Gains } from './loop';

/** How an axis answers a sudden call for a turning rate. */
export interface StepResponse {
  /** Seconds between two of the values. */
  readonly interval: number;
  /** Turning rate as a share of what was called for, from the moment of the call to when it has settled. */
  readonly values: readonly number[];
  /** Of the values. */
  readonly highest: number;
  /** Whether it came to rest; otherwise it swings on. */
  readonly isSettled: boolean;
}

/** How often the gyro is read and filtered, and how often the controller runs, both a second. */
export interface Rates {
  readonly gyro: number;
  readonly control: number;
  /** What the derivative waits beside its filters, s; none without it. */
  readonly derivativeWait?: number;
}

/** A sudden call, and what the command may do; all in shares of full throttle but for the call. */
export interface SuddenCall {
  /** rad/s */
  readonly call: number;
  /** Whether the derivative looks at the difference to the call, and so at the call's own jump. */
  readonly isKicked: boolean;
  /** Command a rad/s² of the call, and the low-pass (Hz) on what the call does; null: none. */
  readonly feedforward: number;
  readonly feedforwardCutoff: number | null;
  readonly limits: CommandLimits;
}

export interface CommandLimits {
  readonly integral: number;
  readonly derivative: number;
  /** Of everything together. */
  readonly command: number;
  /** Rise of one motor's command a second. */
  readonly rise: number;
  /** Share of the integral gain that goes on counting while the command is held back. */
  readonly integralShare: number;
}

/** How closely a step is looked at. */
export interface Closeness {
  /** Periods of the crossover after which what has not settled is taken to swing on. */
  readonly patience: number;
  /** It has settled once it stays within this share of the call for as long as `calmTime` says. */
  readonly within: number;
  /** Rounds a period of the crossover, where fewer than the controller's show enough. */
  readonly rounds: number;
  /** Whether filters that bend the answer a little are taken for waits all the same. */
  readonly isRough: boolean;
}

export const closely: Closeness = { patience: 200, within: 0.005, rounds: 30, isRough: false };
/** For the ends of a span. */
export const loosely: Closeness = { patience: 40, within: 0.01, rounds: 20, isRough: true };

/** s, and periods of the crossover: nobody waits longer for a craft to settle. */
const longest = { time: 4, periods: 8 };

/** s: what an integral does later than this is no overshoot of a stick any more. */
const slowest = 0.5;

/** s: what passes within a tenth of a second, a period of the crossover, half of the time in which the integral works. */
function calmTime({ proportional, integral }: Gains, crossover: number): number {
  const slow = integral > 0 ? Math.min(slowest, (0.5 * proportional) / integral) : 0;
  return Math.max(0.1, 1 / crossover, slow);
}

/** s: so many periods of the crossover, and long enough for the integral. */
function mostTime({ proportional, integral }: Gains, crossover: number, periods: number): number {
  const slow = integral > 0 ? (10 * proportional) / integral : 0;
  const most = Math.max(longest.time, longest.periods / crossover);
  return Math.min(most, Math.max(periods / crossover, slow));
}

/**
 * Simulates a step until it has settled or patience is over: gyro filters once a sample, the controller once a
 * round, the body and the motors in between. Domain: rates (Hz) above 0, the gyro's at least the controller's.
 * `crossover` in Hz.
 */
export function stepResponse(
  axis: Axis,
  rates: Rates,
  step: SuddenCall,
  crossover: number,
  { patience, within }: Closeness,
): StepResponse {
  const interval = 1 / rates.gyro;
  const samplesARound = Math.max(1, Math.round(rates.gyro / rates.control));
  const gyro = new RunningChain(axis.path.gyroFilters);
  const control = new RunningController(axis, samplesARound * interval, step, rates.derivativeWait ?? 0);
  // A command is held through its round, which is half a round of waiting by itself.
  const line = new DelayLine(axis.path.delay * rates.gyro - samplesARound / 2);
  const motors = new Motors(axis, interval, step.limits.rise);
  const calm = Math.ceil(calmTime(axis.gains, crossover) / interval);
  const most = Math.ceil(mostTime(axis.gains, crossover, patience) / interval);
  const values: number[] = [];
  let [turning, command, since, wait] = [0, 0, 0, 0];
  let highest = 0;
  while (values.length < most && since < calm) {
    const share = turning / step.call;
    values.push(share);
    if (share > highest) highest = share;
    since = Math.abs(share - 1) <= within ? since + 1 : 0;
    const seen = gyro.next(turning);
    if (wait === 0) {
      command = control.next(seen);
      wait = samplesARound;
    }
    wait -= 1;
    turning += motors.pushed(line.pass(command)) * interval;
  }
  return { interval, values, highest, isSettled: since >= calm || !stillSwings(values) };
}

/**
 * What both rises and falls by more than this share of the call in the last quarter swings on. What only goes one way
 * creeps: an integral that is slow, or that has much to take back.
 */
const swing = 0.05;

function stillSwings(values: readonly number[]): boolean {
  let [least, most] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
  let [risen, fallen] = [0, 0];
  for (let at = Math.floor(0.75 * values.length); at < values.length; at += 1) {
    const value = values[at] ?? 0;
    least = Math.min(least, value);
    most = Math.max(most, value);
    risen = Math.max(risen, value - least);
    fallen = Math.max(fallen, most - value);
  }
  // Asked so that what is no number swings.
  return !(Math.min(risen, fallen) < swing);
}

/** The controller as it runs, once a round (s). */
class RunningController {
  private readonly derived: RunningChain;
  private readonly derivedWait: DelayLine;
  private readonly ahead: RunningChain;
  /** A second. */
  private readonly rounds: number;
  private held = 0;
  private before = 0;
  private called = 0;
  private isHeldBack = false;

  constructor(
    private readonly axis: Axis,
    private readonly round: number,
    private readonly step: SuddenCall,
    derivativeWait: number,
  ) {
    this.rounds = 1 / round;
    this.derived = new RunningChain(axis.path.derivativeFilters);
    this.derivedWait = new DelayLine(derivativeWait / round);
    const cutoff = step.feedforwardCutoff;
    this.ahead = new RunningChain(
      cutoff === null || cutoff >= 0.5 / round ? [] : [firstOrderLowpass(cutoff, 1 / round)],
    );
  }

  /** The command for a turning rate that was seen. */
  next(seen: number): number {
    const { gains } = this.axis;
    const { call, limits } = this.step;
    const error = call - seen;
    const gathered = this.isHeldBack ? limits.integralShare : 1;
    this.held = bounded(this.held + gathered * gains.integral * error * this.round, limits.integral);
    const watched = this.step.isKicked ? error : -seen;
    const change = this.derivedWait.pass(this.derived.next((watched - this.before) * this.rounds));
    this.before = watched;
    const braked = bounded(gains.derivative * change, limits.derivative);
    const wanted = gains.proportional * error + this.held + braked + this.pushedAhead();
    const command = bounded(wanted, limits.command);
    this.isHeldBack = command !== wanted;
    return command;
  }

  private pushedAhead(): number {
    const { call, feedforward } = this.step;
    if (feedforward === 0) return 0;
    const change = (call - this.called) * this.rounds;
    this.called = call;
    return feedforward * this.ahead.next(change);
  }
}

function bounded(value: number, most: number): number {
  if (value > most) return most;
  if (value < -most) return -most;
  return value;
}

/** Two motors that go opposite ways, with their lag, their limited rise and their reaction on the body. */
class Motors {
  private readonly authority: number;
  private readonly decay: number;
  /** Of the way that is still to go, the share that is missing in the mean over a sample. */
  private readonly missing: number;
  /** What a change of speed within a sample does beside the thrust. */
  private readonly reaction: number;
  /** Of one motor's command within a sample. */
  private readonly rise: number;
  private faster = 0;
  private slower = 0;
  private speed = 0;

  constructor({ authority, motorLag, reactionLead }: Axis, interval: number, rise: number) {
    this.authority = authority;
    this.decay = motorLag > 0 ? Math.exp(-interval / motorLag) : 0;
    // The integral of the approach over the sample.
    this.missing = ((1 - this.decay) * motorLag) / interval;
    this.reaction = reactionLead / interval;
    this.rise = rise * interval;
  }

  /** The mean turning acceleration over a sample with a command. */
  pushed(command: number): number {
    this.faster = Math.min(command, this.faster + this.rise);
    this.slower = Math.min(-command, this.slower + this.rise);
    const target = (this.faster - this.slower) / 2;
    const gap = this.speed - target;
    const next = target + gap * this.decay;
    const changed = next - this.speed;
    this.speed = next;
    return this.authority * (target + gap * this.missing + this.reaction * changed);
  }
}

/** Filters as they run, one after the other. */
class RunningChain {
  private readonly filters: readonly RunningFilter[];

  constructor(filters: readonly DigitalFilter[]) {
    this.filters = filters.map((filter) => new RunningFilter(filter));
  }

  next(value: number): number {
    let passed = value;
    for (const filter of this.filters) passed = filter.next(passed);
    return passed;
  }
}

/** A filter as it runs, sample by sample, in transposed direct form: two numbers hold all that was before. */
class RunningFilter {
  private readonly b0: number;
  private readonly b1: number;
  private readonly b2: number;
  private readonly a1: number;
  private readonly a2: number;
  private first = 0;
  private second = 0;

  constructor({ b, a }: DigitalFilter) {
    [this.b0, this.b1, this.b2] = b;
    [this.a1, this.a2] = a;
  }

  next(value: number): number {
    const out = this.b0 * value + this.first;
    this.first = this.b1 * value - this.a1 * out + this.second;
    this.second = this.b2 * value - this.a2 * out;
    return out;
  }
}

/** Gives back what went in so many samples ago; between two samples the mean, by their nearness. */
class DelayLine {
  private readonly held: Float64Array;
  private readonly share: number;
  private at = 0;

  constructor(samples: number) {
    const waited = Math.max(0, samples);
    const whole = Math.floor(waited);
    this.held = new Float64Array(whole + 2);
    this.share = waited - whole;
  }

  pass(value: number): number {
    const { held, share } = this;
    held[this.at] = value;
    const older = this.at + 1 === held.length ? 0 : this.at + 1;
    const newer = older + 1 === held.length ? 0 : older + 1;
    this.at = older;
    return share * (held[older] ?? 0) + (1 - share) * (held[newer] ?? 0);
  }
}

/** The gain of filters that change nothing about how the loop moves lies within this of 1, so many times above it. */
const untouched = { gain: 0.1, times: 3 };

/** So many times above its crossover a loop that may swing there is still looked at often enough. */
const near = 5;

/** Hz: up to where a loop moves: its crossover, but for one that comes near to swinging far above that. */
export function reachOf(crossover: number, maySwingAt: number | null): number {
  return Math.max(crossover, (maySwingAt ?? 0) / near);
}

/**
 * The axis with its filters as the waits that they are at the crossover, and how often it then has to be looked at:
 * much quicker to simulate. Null where filters do more than wait to what the loop moves. `reach` as of `reachOf`.
 * Source: a filter delays what is slow by its phase over its pulse (any textbook); proved against the full simulation.
 */
export function quickened(
  axis: Axis,
  { control }: Rates,
  crossover: number,
  { rounds, isRough }: Closeness,
  reach = crossover,
): { readonly axis: Axis; readonly rates: Rates } | null {
  const { gyroFilters, derivativeFilters, delay } = axis.path;
  const brakes = axis.gains.derivative === 0 ? [] : derivativeFilters;
  const isNear = isRough && reach === crossover;
  if (!isNear && !(isOnlyWait(gyroFilters, reach) && isOnlyWait(brakes, reach))) return null;
  const wait = delay + waitOf(gyroFilters, crossover);
  // A round waits half of its length by itself: no longer than the whole wait.
  const rate = Math.min(control, Math.max(rounds * reach, 0.5 / wait));
  return {
    axis: { ...axis, path: { gyroFilters: [], derivativeFilters: [], delay: wait } },
    // So does a difference between two rounds.
    rates: {
      gyro: rate,
      control: rate,
      derivativeWait: Math.max(0, waitOf(brakes, crossover) + 0.5 / control - 0.5 / rate),
    },
  };
}

function isOnlyWait(filters: readonly DigitalFilter[], reach: number): boolean {
  return Math.abs(chainGain({ filters }, untouched.times * reach) - 1) <= untouched.gain;
}

function waitOf(filters: readonly DigitalFilter[], crossover: number): number {
  return -chainPhase({ filters }, crossover) / (2 * Math.PI * crossover);
}

/** By how much the highest value stands above the call, as a share of it; 0 where it never does. */
export function overshoot({ highest }: StepResponse): number {
  return Math.max(0, highest - 1);
}
