import type { DigitalFilter } from './filter';
import type { Axis } from './loop';

/** How an axis answers a sudden call for a turning rate of 1. */
export interface StepResponse {
  /** Seconds between two of the values. */
  readonly interval: number;
  /** Turning rate as a share of what was called for, from the moment of the call on. */
  readonly values: Float64Array;
}

/** How often the gyro is read and filtered, and how often the controller runs, both a second. */
export interface Rates {
  readonly gyro: number;
  readonly control: number;
}

/**
 * Simulates a step: gyro filters once a sample, the controller once a round, the body and the motors' lag in
 * between. `isDamped`: the derivative looks at the turning rate only, so that a sudden stick gives no kick. The
 * integral runs without a limit, and so do the commands: for small steps. Domain: rates (Hz) and length (s)
 * above 0, the gyro's rate at least the controller's.
 */
export function stepResponse(axis: Axis, rates: Rates, length: number, isDamped = true): StepResponse {
  const interval = 1 / rates.gyro;
  const samplesARound = Math.max(1, Math.round(rates.gyro / rates.control));
  const gyro = new RunningChain(axis.gyroFilters);
  const control = new RunningController(axis, samplesARound * interval, isDamped);
  const line = new DelayLine(axis.delay * rates.gyro);
  const decay = axis.motorLag > 0 ? Math.exp(-interval / axis.motorLag) : 0;
  const values = new Float64Array(Math.ceil(length / interval));
  let [turning, pushed, command] = [0, 0, 0];
  for (let sample = 0; sample < values.length; sample += 1) {
    values[sample] = turning;
    const seen = gyro.next(turning);
    if (sample % samplesARound === 0) command = control.next(seen);
    const target = axis.authority * line.pass(command);
    // The acceleration nears its target; the mean over the sample moves the body.
    const next = target + (pushed - target) * decay;
    turning += ((pushed + next) / 2) * interval;
    pushed = next;
  }
  return { interval, values };
}

/** The controller as it runs, once a round (s). */
class RunningController {
  private readonly derived: RunningChain;
  private held = 0;
  private before = 0;

  constructor(
    private readonly axis: Axis,
    private readonly round: number,
    private readonly isDamped: boolean,
  ) {
    this.derived = new RunningChain(axis.derivativeFilters);
  }

  /** The command for a turning rate that was seen. */
  next(seen: number): number {
    const { gains } = this.axis;
    const error = 1 - seen;
    this.held += gains.integral * error * this.round;
    const watched = this.isDamped ? -seen : error;
    const change = this.derived.next((watched - this.before) / this.round);
    this.before = watched;
    return gains.proportional * error + this.held + gains.derivative * change;
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

/** Gives back what went in so many samples ago, at least one; between two samples the mean, by their nearness. */
class DelayLine {
  private readonly held: Float64Array;
  private readonly share: number;
  private at = 0;
  private before = 0;

  constructor(samples: number) {
    const whole = Math.max(1, Math.floor(samples));
    this.held = new Float64Array(whole);
    this.share = Math.max(0, samples - whole);
  }

  pass(value: number): number {
    const out = this.held[this.at] ?? 0;
    this.held[this.at] = value;
    this.at = this.at + 1 === this.held.length ? 0 : this.at + 1;
    const between = out + this.share * (this.before - out);
    this.before = out;
    return between;
  }
}

/** By how much the highest value stands above the call, as a share of it; 0 where it never does. */
export function overshoot({ values }: StepResponse): number {
  let most = 0;
  for (const value of values) most = Math.max(most, value - 1);
  return most;
}

/** Seconds until half of what was called for is there; null: not within the time that was looked at. */
export function halfTime({ values, interval }: StepResponse): number | null {
  const found = values.findIndex((value) => value >= 0.5);
  return found < 0 ? null : found * interval;
}
