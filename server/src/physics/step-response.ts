import type { DigitalFilter } from './filter';
import type { Axis } from './loop';

/** How an axis answers a sudden call for a turning rate of 1. */
export interface StepResponse {
  /** Seconds between two of the values. */
  readonly interval: number;
  /** Turning rate as a share of what was called for, from the moment of the call on. */
  readonly values: readonly number[];
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
  const gyro = running(axis.gyroFilters);
  const control = controllerOf(axis, samplesARound * interval, isDamped);
  const line = new DelayLine(axis.delay * rates.gyro);
  const decay = axis.motorLag > 0 ? Math.exp(-interval / axis.motorLag) : 0;
  const values: number[] = [];
  let [turning, pushed, command] = [0, 0, 0];
  for (let sample = 0; sample * interval < length; sample += 1) {
    values.push(turning);
    const seen = gyro(turning);
    if (sample % samplesARound === 0) command = control(seen);
    const target = axis.authority * line.pass(command);
    // The acceleration nears its target; the mean over the sample moves the body.
    const next = target + (pushed - target) * decay;
    turning += ((pushed + next) / 2) * interval;
    pushed = next;
  }
  return { interval, values };
}

/** The controller as it runs: the command for a turning rate that was seen, once a round (s). */
function controllerOf({ gains, derivativeFilters }: Axis, round: number, isDamped: boolean) {
  const derived = running(derivativeFilters);
  let [held, before] = [0, 0];
  return (seen: number): number => {
    const error = 1 - seen;
    held += gains.integral * error * round;
    const watched = isDamped ? -seen : error;
    const change = derived((watched - before) / round);
    before = watched;
    return gains.proportional * error + held + gains.derivative * change;
  };
}

/** A chain as it runs, sample by sample, in transposed direct form: two numbers hold all that was before. */
function running(filters: readonly DigitalFilter[]): (value: number) => number {
  const coefficients = Float64Array.from(filters.flatMap(({ a, b }) => [...b, ...a]));
  const held = new Float64Array(2 * filters.length);
  return (value) => {
    let passed = value;
    for (let filter = 0; filter < filters.length; filter += 1) {
      const [at, own] = [5 * filter, 2 * filter];
      const out = (coefficients[at] ?? 0) * passed + (held[own] ?? 0);
      held[own] =
        (coefficients[at + 1] ?? 0) * passed - (coefficients[at + 3] ?? 0) * out + (held[own + 1] ?? 0);
      held[own + 1] = (coefficients[at + 2] ?? 0) * passed - (coefficients[at + 4] ?? 0) * out;
      passed = out;
    }
    return passed;
  };
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
  return values.reduce((most, value) => Math.max(most, value - 1), 0);
}

/** Seconds until half of what was called for is there; null: not within the time that was looked at. */
export function halfTime({ values, interval }: StepResponse): number | null {
  const found = values.findIndex((value) => value >= 0.5);
  return found < 0 ? null : found * interval;
}
