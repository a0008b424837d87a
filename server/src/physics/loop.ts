import { add, type Complex, over, times, unit } from './complex';
import { chainResponse, type DigitalFilter } from './filter';

/** Gains of one axis in physical units: command (share of full throttle) for a turning rate in rad/s. */
export interface Gains {
  /** Command a rad/s. */
  readonly proportional: number;
  /** Command a rad. */
  readonly integral: number;
  /** Command a rad/s². */
  readonly derivative: number;
}

/** What every axis of a craft has in common: filters and waits. */
export interface ControlPath {
  /** Between the gyro and the controller. */
  readonly gyroFilters: readonly DigitalFilter[];
  /** On the derivative alone, behind the gyro's. */
  readonly derivativeFilters: readonly DigitalFilter[];
  /** Everything that only waits: sampling, computing, the command's way, s. */
  readonly delay: number;
}

/** One axis of a craft with its controller, about one state of its motors; SI. */
export interface Axis {
  readonly gains: Gains;
  readonly path: ControlPath;
  /** Turning acceleration (rad/s²) that a command of 1 gives once the motors have followed. */
  readonly authority: number;
  /** Time constant with which the motors' speed follows the command, s. */
  readonly motorLag: number;
  /**
   * By how much the rotors' own reaction runs ahead of their drag, s (`reactionLead`); 0 about an axis that thrust
   * turns.
   */
  readonly reactionLead: number;
}

/** The loop opened at the gyro, at a frequency in Hz: from an error in turning rate to the rate that comes of it. */
export function openLoop(axis: Axis, frequency: number): Complex {
  const command = controller(axis.gains, filteredTone(axis.path, frequency));
  const wait = unit(-delayPhase(frequency, axis.path.delay));
  return times(times(command, wait), bodyOf(axis, frequency));
}

/** What a call for a turning rate does beside what the gyro says. */
export interface Call {
  /** Whether the derivative is of the error, and so kicked by a call. */
  readonly isKicked: boolean;
  /** Command a rad/s² of the call, and the filters on it. */
  readonly feedforward: number;
  readonly feedforwardFilters: readonly DigitalFilter[];
}

/**
 * What comes of a turning rate that is asked for, at a frequency in Hz, as the controller sees it: behind the gyro's
 * filters. L/(1 + L) where all of the controller works on the error; else the call has a controller of its own.
 * Source: Åström and Murray, Feedback Systems, 2nd edition, section 12.1 (two degrees of freedom).
 */
export function answerTo(axis: Axis, call: Call, frequency: number): Complex {
  const loop = openLoop(axis, frequency);
  const { gains, path } = axis;
  const { derived } = filteredTone(path, frequency);
  const held = controlOf(gains, frequency, derived);
  const called = call.isKicked ? held : controlOf({ ...gains, derivative: 0 }, frequency, derived);
  const passed = chainResponse({ filters: call.feedforwardFilters }, frequency);
  const ahead = times({ re: 0, im: 2 * Math.PI * frequency * call.feedforward }, passed);
  return times(over(add(called, ahead), held), over(loop, add({ re: 1, im: 0 }, loop)));
}

/** From the command to the turning rate: lag and reaction of the motors, then the body. */
function bodyOf({ authority, motorLag, reactionLead }: Axis, frequency: number): Complex {
  const pulse = 2 * Math.PI * frequency;
  const torque = over(
    { re: authority, im: authority * pulse * reactionLead },
    { re: 1, im: pulse * motorLag },
  );
  return { re: torque.im / pulse, im: -torque.re / pulse };
}

function controlOf(
  { proportional, integral, derivative }: Gains,
  frequency: number,
  derived: Complex,
): Complex {
  const pulse = 2 * Math.PI * frequency;
  const held: Complex = { re: proportional, im: -integral / pulse };
  return derivative === 0 ? held : add(held, times({ re: 0, im: derivative * pulse }, derived));
}

/** Phase (rad) that a wait (s) costs at a frequency (Hz): 2 π f T. Source: any textbook on control. */
export function delayPhase(frequency: number, delay: number): number {
  return 2 * Math.PI * frequency * delay;
}

/** A tone (Hz), and what filters make of it: of the gyro's reading, and of the derivative behind it. */
export interface FilteredTone {
  readonly frequency: number;
  readonly seen: Complex;
  readonly derived: Complex;
}

export function filteredTone(
  { gyroFilters, derivativeFilters }: Omit<ControlPath, 'delay'>,
  frequency: number,
): FilteredTone {
  return {
    frequency,
    seen: chainResponse({ filters: gyroFilters }, frequency),
    derived: chainResponse({ filters: derivativeFilters }, frequency),
  };
}

/** From the gyro's reading of a tone to the command: filters and gains. */
export function controller(gains: Gains, { frequency, seen, derived }: FilteredTone): Complex {
  return times(controlOf(gains, frequency, derived), seen);
}
