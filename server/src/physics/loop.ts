import { add, type Complex, type Polar, polar, times } from './complex';
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

/** One axis of a craft with its controller; SI. */
export interface Axis {
  readonly gains: Gains;
  /** Between the gyro and the controller. */
  readonly gyroFilters: readonly DigitalFilter[];
  /** On the derivative alone, behind the gyro's. */
  readonly derivativeFilters: readonly DigitalFilter[];
  /** Turning acceleration (rad/s²) that a command of 1 gives once the motors have followed. */
  readonly authority: number;
  /** Time constant with which thrust follows the command, s. */
  readonly motorLag: number;
  /** Everything that only waits: sampling, computing, the command's way, s. */
  readonly delay: number;
}

/**
 * The loop opened at the gyro, at a frequency in Hz: from an error in turning rate to the rate that comes of it.
 * `control`: the controller's part, where it is known already. By size and angle, so that what only waits or lags
 * adds an angle and costs no more.
 */
export function openLoop(
  axis: Axis,
  frequency: number,
  control: Polar = polar(controller(axis, frequency)),
): Polar {
  const pulse = 2 * Math.PI * frequency;
  const lagged = pulse * axis.motorLag;
  const gain = axis.authority / (pulse * Math.sqrt(1 + lagged * lagged));
  const phase = -Math.PI / 2 - Math.atan(lagged) - pulse * axis.delay;
  return { gain: gain * control.gain, phase: phase + control.phase };
}

/** Phase (rad) that a wait (s) costs at a frequency (Hz): 2 π f T. Source: any textbook on control. */
export function delayPhase(frequency: number, delay: number): number {
  return 2 * Math.PI * frequency * delay;
}

/** From the gyro's reading to the command: filters and gains. */
export function controller({ gains, gyroFilters, derivativeFilters }: Axis, frequency: number): Complex {
  const pulse = 2 * Math.PI * frequency;
  const held: Complex = { re: gains.proportional, im: -gains.integral / pulse };
  const derived = chainResponse({ filters: derivativeFilters }, frequency);
  const summed = add(held, times({ re: 0, im: gains.derivative * pulse }, derived));
  return times(summed, chainResponse({ filters: gyroFilters }, frequency));
}

/** A loop at a frequency in Hz. `step`: which point of the band's grid that is, for who keeps what is asked there. */
export type Loop = (frequency: number, step?: number) => Polar;

/** How far a loop is from swinging by itself. Frequencies in Hz. */
export interface Margins {
  /** Where the loop's gain last falls through 1; null: it never does in the band that was looked at. */
  readonly crossover: number | null;
  /** At the crossover, rad; negative: it swings by itself. */
  readonly phaseMargin: number | null;
  /** How many times more gain it takes to swing, where the phase has turned by half a turn; null: none found. */
  readonly gainMargin: number | null;
  readonly gainMarginAt: number | null;
}

export interface Band {
  readonly from: number;
  readonly to: number;
}

/** Steps a decade in which the band is looked through: narrower than any resonance of a craft. */
const stepsPerDecade = 16;

/**
 * Margins of a loop in a band of frequencies (Hz, from above 0): the phase is followed without jumps; the
 * crossover is the last one, the gain margin the least one.
 * Source: definitions, e.g. K. J. Åström and R. M. Murray, Feedback Systems, section 10.3.
 */
export function margins(loop: Loop, band: Band): Margins {
  let found: Margins = { crossover: null, phaseMargin: null, gainMargin: null, gainMarginAt: null };
  let before: LoopPoint | null = null;
  for (const [step, frequency] of gridOf(band).entries()) {
    const point = pointAt(loop(frequency, step), frequency, before);
    if (before !== null) found = crossed(loop, before, point, found);
    before = point;
  }
  return found;
}

/** What is known once the loop has gone from one point of the grid to the next. */
function crossed(loop: Loop, before: LoopPoint, point: LoopPoint, known: Margins): Margins {
  let found = known;
  if (before.gain >= 1 && point.gain < 1) {
    const at = between(loop, before, point, ({ gain }) => Math.log(gain));
    found = { ...found, crossover: at.frequency, phaseMargin: Math.PI + at.phase };
  }
  const turns = halfTurns(point.phase);
  const turnsBefore = halfTurns(before.phase);
  if (turns !== turnsBefore) {
    const level = Math.PI * (1 - 2 * Math.max(turns, turnsBefore));
    const at = between(loop, before, point, ({ phase }) => phase - level);
    const more = 1 / at.gain;
    if (more > 1 && (found.gainMargin === null || more < found.gainMargin))
      found = { ...found, gainMargin: more, gainMarginAt: at.frequency };
  }
  return found;
}

interface LoopPoint {
  readonly frequency: number;
  readonly gain: number;
  /** Without jumps, rad. */
  readonly phase: number;
}

/** The same band is looked through for every loop. */
const grids = new WeakMap<Band, readonly number[]>();

function gridOf(band: Band): readonly number[] {
  const known = grids.get(band);
  if (known !== undefined) return known;
  const { from, to } = band;
  const count = Math.ceil(Math.log10(to / from) * stepsPerDecade);
  const grid = Array.from({ length: count + 1 }, (_, step) => from * (to / from) ** (step / count));
  grids.set(band, grid);
  return grid;
}

/** A loop starts late, not early: an angle just above half a turn is one just below minus half a turn. */
function startOf(phase: number): number {
  return phase > Math.PI / 2 ? phase - 2 * Math.PI : phase;
}

/** How many odd half turns lie above a phase: 0 above −180°, 1 above −540°, and so on. */
function halfTurns(phase: number): number {
  return Math.ceil((-phase / Math.PI - 1) / 2);
}

/** Closer than 0.01 % of gain or 0.006 degrees nobody needs to know a crossing. */
const closeEnough = 1e-4;
const mostTries = 40;

/**
 * Where a measure of two neighbouring points passes through 0, by false position with the weight of an end that
 * stays halved (Illinois method).
 * Source: M. Dowell and P. Jarratt, A modified regula falsi method, BIT 11 (1971), from memory.
 */
function between(
  loop: Loop,
  one: LoopPoint,
  other: LoopPoint,
  measure: (point: LoopPoint) => number,
): LoopPoint {
  let [left, right] = [one, other];
  let [atLeft, atRight] = [measure(one), measure(other)];
  let found = one;
  for (let tries = 0; tries < mostTries; tries += 1) {
    const share = atLeft / (atLeft - atRight);
    const frequency = left.frequency * (right.frequency / left.frequency) ** share;
    found = pointAt(loop(frequency), frequency, left);
    const value = measure(found);
    if (Math.abs(value) < closeEnough) break;
    if (value > 0 === atLeft > 0) {
      [left, atLeft] = [found, value];
      atRight /= 2;
    } else {
      [right, atRight] = [found, value];
      atLeft /= 2;
    }
  }
  return found;
}

/** A point of the loop, its phase within half a turn of that of its neighbour. */
function pointAt({ gain, phase: own }: Polar, frequency: number, near: LoopPoint | null): LoopPoint {
  const turn = 2 * Math.PI;
  const phase = own + turn * Math.round(((near?.phase ?? 0) - own) / turn);
  return { frequency, gain, phase: near === null ? startOf(phase) : phase };
}
