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
  const gyro = axis.gyroFilters.map(running);
  const control = controllerOf(axis, samplesARound * interval, isDamped);
  const line = new DelayLine(Math.max(1, Math.round(axis.delay * rates.gyro)));
  const decay = axis.motorLag > 0 ? Math.exp(-interval / axis.motorLag) : 0;
  const values: number[] = [];
  let [turning, pushed, command] = [0, 0, 0];
  for (let sample = 0; sample * interval < length; sample += 1) {
    values.push(turning);
    let seen = turning;
    for (const filter of gyro) seen = filter(seen);
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
  const derived = derivativeFilters.map(running);
  let [held, before] = [0, 0];
  return (seen: number): number => {
    const error = 1 - seen;
    held += gains.integral * error * round;
    const watched = isDamped ? -seen : error;
    let change = (watched - before) / round;
    before = watched;
    for (const filter of derived) change = filter(change);
    return gains.proportional * error + held + gains.derivative * change;
  };
}

function running({ b, a }: DigitalFilter): (value: number) => number {
  let [once, twice] = [0, 0];
  // Transposed direct form: two numbers hold all that was before.
  return (value) => {
    const out = b[0] * value + once;
    once = b[1] * value - a[0] * out + twice;
    twice = b[2] * value - a[1] * out;
    return out;
  };
}

class DelayLine {
  private readonly held: number[];
  private at = 0;

  constructor(length: number) {
    this.held = new Array<number>(length).fill(0);
  }

  pass(value: number): number {
    const out = this.held[this.at] ?? 0;
    this.held[this.at] = value;
    this.at = (this.at + 1) % this.held.length;
    return out;
  }
}

/** By how much the highest value stands above the call, as a share of it; 0 where it never does. */
export function overshoot({ values }: StepResponse): number {
  return Math.max(0, ...values.map((value) => value - 1));
}

/** Seconds until half of what was called for is there; null: not within the time that was looked at. */
export function halfTime({ values, interval }: StepResponse): number | null {
  const found = values.findIndex((value) => value >= 0.5);
  return found < 0 ? null : found * interval;
}
