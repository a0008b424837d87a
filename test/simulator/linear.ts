import { type Complex, minus, one, over, plus, real, scaled, times } from './complex';
import { fadedAt, shaped } from './controller';
import { axes, type PerAxis, type SimulatedCraft, type SimulatedFilter, wholeTurn } from './craft';
import { Chain } from './filters';
import { dampingShare, leverage } from './flight';
import { dragFactor, settling, speedAt, thrustAt, turnsCraft } from './motors';

// What the simulated loop does to small movements about a hover: its own steps written as powers of z, one after the
// other, in plain complex numbers. Nothing of `server/src` is used, so that an error there can't hide here.

/** So many steps later, at a rate of steps. */
const later = (frequency: number, steps: number, rate: number): Complex => ({
  re: Math.cos((wholeTurn * frequency * steps) / rate),
  im: -Math.sin((wholeTurn * frequency * steps) / rate),
});

/** About which state the loop is looked at. */
export interface Hovering {
  /** V, of the pack under its load. */
  readonly volts: number;
  /** Of the motors, rad/s. */
  readonly speeds: readonly number[];
  /** That the pilot asks for, 0 to 1. */
  readonly throttle: number;
}

/** The parts of a loop about one axis, at a frequency in Hz. */
export interface LinearLoop {
  /** From what is asked of the mixer for the axis to how the craft turns. */
  readonly body: (frequency: number) => Complex;
  /** From how it turns to what the controller sees: waiting and filters. */
  readonly seen: (frequency: number) => Complex;
  /** From what the controller sees to what it takes away from what it asks for. */
  readonly held: (frequency: number) => Complex;
  /** From what the sticks ask for to what the controller asks for. */
  readonly steered: (frequency: number) => Complex;
  readonly open: (frequency: number) => Complex;
  /** From what the sticks ask for to what the controller sees. */
  readonly closed: (frequency: number) => Complex;
}

export function linearLoop(craft: SimulatedCraft, axis: number, hover: Hovering): LinearLoop {
  const { board } = craft;
  const { gyroRate, controlRate, late } = board;
  const filters = impulseResponse(board.gyroFilters, gyroRate, craft.motors.length);
  const body = bodyOf(craft, axis, hover);
  const { held, steered } = controllerOf(craft, axis, hover.throttle);
  const round = Math.round(gyroRate / controlRate);
  const waiting = (frequency: number, seconds: number) =>
    later(frequency, Math.round(seconds * gyroRate), gyroRate);
  /** An output stays as it is for a round of the controller. */
  const kept = (frequency: number) =>
    Array.from({ length: round }, (_, step) => later(frequency, step, gyroRate)).reduce(
      (sum, step) => plus(sum, scaled(step, 1 / round)),
      real(0),
    );
  const driven = (frequency: number) =>
    times(times(kept(frequency), waiting(frequency, late.output)), body(frequency));
  const seen = (frequency: number) => times(waiting(frequency, late.gyro), filters(frequency));
  const open = (frequency: number) => times(times(driven(frequency), seen(frequency)), held(frequency));
  const closed = (frequency: number) =>
    over(times(times(driven(frequency), seen(frequency)), steered(frequency)), plus(one, open(frequency)));
  return { body: driven, seen, held, steered, open, closed };
}

/** A loop that waits so many seconds longer. */
export function waiting(loop: LinearLoop, seconds: number): LinearLoop {
  const later = (of: (frequency: number) => Complex) => (frequency: number) => {
    const angle = wholeTurn * frequency * seconds;
    return times(of(frequency), { re: Math.cos(angle), im: -Math.sin(angle) });
  };
  const open = later(loop.open);
  const driven = (frequency: number) => times(loop.body(frequency), loop.seen(frequency));
  const closed = (frequency: number) =>
    over(times(later(driven)(frequency), loop.steered(frequency)), plus(one, open(frequency)));
  return { ...loop, body: later(loop.body), open, closed };
}

/** Each motor towards its own speed, its thrust and drag on its own arm, and what they turn. */
function bodyOf(craft: SimulatedCraft, axis: number, { volts, speeds, throttle }: Hovering) {
  const { motors, lag, board, rotorInertia } = craft;
  const dt = 1 / board.gyroRate;
  const inertia = craft.inertia[axes[axis] ?? 'roll'];
  const [lifting, dragging] = [thrustAt(craft, 1), dragFactor(craft)];
  // Up and down alike often: as fast as either on the mean.
  const follows = (2 - Math.exp(-dt / lag.up) - Math.exp(-dt / lag.down)) / 2;
  const damping = dampingShare * (leverage(craft)[axis] ?? 0);
  const settled = settling(craft);
  const told = slopeOf((asked) => shaped(board.shape, asked), throttle, 1e-4);
  const parts = motors.map((motor, index) => {
    const speed = speeds[index] ?? 0;
    const share = shareFor(craft, speed, volts);
    const goal =
      slopeOf((output) => settled(output * volts), share, 1e-4) * told * motor.mix[axes[axis] ?? 'roll'];
    const arm = axis === 0 ? -motor.aside : axis === 1 ? motor.ahead : 0;
    const turning = axis === 2 ? turnsCraft(motor) : 0;
    return {
      /** Torque a rad/s, and Nm a rad/s of what it gets faster in a step. */
      still: goal * (2 * motor.thrustShare * lifting * speed * arm + 2 * dragging * speed * turning),
      faster: (goal * rotorInertia * turning) / dt,
    };
  });
  const still = parts.reduce((sum, part) => sum + part.still, 0);
  const faster = parts.reduce((sum, part) => sum + part.faster, 0);
  return (frequency: number): Complex => {
    const step = later(frequency, 1, board.gyroRate);
    const speed = over(scaled(step, follows), minus(one, scaled(step, 1 - follows)));
    // What it gets faster by until the next step.
    const change = scaled(minus(one, speed), follows);
    const torque = plus(scaled(speed, still), scaled(change, faster));
    const turned = over(scaled(step, dt / inertia), minus(one, scaled(step, 1 - (damping * dt) / inertia)));
    return times(torque, turned);
  };
}

/** Share of the volts with which a motor keeps a speed: by halving. */
function shareFor(craft: SimulatedCraft, speed: number, volts: number): number {
  let [low, high] = [0, 2];
  for (let half = 0; half < 50; half += 1) {
    const middle = (low + high) / 2;
    if (speedAt(craft, middle * volts) < speed) low = middle;
    else high = middle;
  }
  return low;
}

function slopeOf(of: (at: number) => number, at: number, step: number): number {
  return (of(at + step) - of(at - step)) / (2 * step);
}

function controllerOf(craft: SimulatedCraft, axis: number, throttle: number) {
  const { gains, controlRate, derivativeFilters, feedforwardFilters, derivativeOf, fade } = craft.board;
  const { proportional, integral, derivative, feedforward } = gains[axes[axis] ?? 'roll'];
  const left = fadedAt(fade, throttle);
  const braked = impulseResponse(derivativeFilters, controlRate, craft.motors.length);
  const ahead = impulseResponse(feedforwardFilters, controlRate, craft.motors.length);
  const change = (frequency: number) => scaled(minus(one, later(frequency, 1, controlRate)), controlRate);
  const spring = (frequency: number) =>
    plus(real(left.proportional * proportional), over(real(left.integral * integral), change(frequency)));
  const brake = (frequency: number) =>
    scaled(times(change(frequency), braked(frequency)), left.derivative * derivative);
  const push = (frequency: number) => scaled(times(change(frequency), ahead(frequency)), feedforward);
  return {
    held: (frequency: number) => plus(spring(frequency), brake(frequency)),
    steered: (frequency: number) => {
      const sprung = plus(spring(frequency), push(frequency));
      return derivativeOf === 'error' ? plus(sprung, brake(frequency)) : sprung;
    },
  };
}

/** Filters as they are, by what they answer to a single one. */
function impulseResponse(filters: readonly SimulatedFilter[], rate: number, motors: number) {
  if (filters.length === 0) return () => one;
  const chain = new Chain(filters, rate, motors);
  const answer = Float64Array.from({ length: Math.round(longest * rate) }, (_, step) =>
    chain.run(0, step === 0 ? 1 : 0),
  );
  return (frequency: number): Complex => {
    let [re, im] = [0, 0];
    const turn = later(frequency, 1, rate);
    let at: Complex = one;
    for (const value of answer) {
      re += value * at.re;
      im += value * at.im;
      at = times(at, turn);
    }
    return { re, im };
  };
}

/** After so long a low-pass of 40 Hz has forgotten, s. */
const longest = 0.1;

export type AxisIndex = 0 | 1 | 2;
export const axisIndex: Readonly<Record<keyof PerAxis, AxisIndex>> = { roll: 0, pitch: 1, yaw: 2 };

/**
 * What only waits between what a motor is told and what the controller sees, s: half of a round of the controller that an
 * output is kept, half of a step that a motor is held and half of one that the craft is turned by, and what the craft says
 * of its own; `filters`: of the gyro, at a frequency (Hz).
 */
export function waitsOf(
  { board }: SimulatedCraft,
  frequency: number,
): { readonly plain: number; readonly filters: number } {
  const { gyroRate, controlRate, late, gyroFilters } = board;
  const { re, im } = impulseResponse(gyroFilters, gyroRate, 4)(frequency);
  const steps = Math.round(late.gyro * gyroRate) + Math.round(late.output * gyroRate);
  return {
    plain: (steps + 0.5) / gyroRate + 0.5 / controlRate,
    filters: -Math.atan2(im, re) / (wholeTurn * frequency),
  };
}
