import { sizeOf } from './complex';
import { unshaped } from './controller';
import {
  axes,
  type PerAxis,
  type SimulatedBoard,
  type SimulatedCraft,
  type SimulatedGains,
  wholeTurn,
} from './craft';
import { axisIndex, type Hovering, linearLoop } from './linear';
import { crossingWith } from './loop-truth';
import { hoverOutputs, hoverSpeeds } from './motors';
import type { Random } from './random';

// Gains as somebody might have tuned them, whole numbers of a board of their own, and all else that a controller has.

/** A hover with the pack not quite fresh. */
export function hoverOf(craft: SimulatedCraft): Hovering {
  const volts = 0.93 * craft.pack.open[0]!;
  const outputs = hoverOutputs(craft, volts);
  const mean = outputs.reduce((sum, output) => sum + output, 0) / outputs.length;
  return { volts, speeds: hoverSpeeds(craft), throttle: unshaped(craft.board.shape, mean) };
}

/** What a whole number of a board stands for, of each term: shares of the motors' range as in the gains. */
export type BoardFactors = Readonly<Record<keyof SimulatedGains, number>>;

/** The most that a script can say of a proportional gain and of a derivative. */
const most = { proportional: 1.5, derivative: 0.026 };

/**
 * Gains with which each axis is left a phase margin somewhere between lively and calm, with a derivative that makes up
 * for some of the motors' lag; rounded to whole numbers of the board.
 */
export function tuned(
  craft: SimulatedCraft,
  random: Random,
): { readonly board: SimulatedBoard; readonly factors: BoardFactors } {
  const lag = (craft.lag.up + craft.lag.down) / 2;
  const braking = random.between(0.2, 0.75);
  const holding = random.between(0.05, 0.25);
  const pushing = random.unit() < 0.4 ? random.between(0.1, 0.4) : 0;
  const margins = {
    roll: random.between(42, 68),
    pitch: random.between(42, 68),
    yaw: random.between(55, 75),
  };
  const plain = fitted(craft, random);
  const made = axes.map((axis) =>
    gainsFor({ ...craft, board: plain }, axis, {
      derivativeTime: axis === 'yaw' ? 0 : braking * lag,
      holding,
      pushing: axis === 'yaw' ? 0 : pushing,
      margin: (margins[axis] * wholeTurn) / 360,
    }),
  );
  const calmed = made.map((gains, axis) => calm({ ...craft, board: plain }, axes[axis]!, gains));
  const factors = boardFactors(calmed[0]!, random);
  const [roll, pitch, yaw] = calmed.map((gains) => rounded(gains, factors));
  return { board: { ...plain, gains: { roll: roll!, pitch: pitch!, yaw: yaw! } }, factors };
}

/** What a board has beside its gains; some have none of it. */
function fitted({ board }: SimulatedCraft, random: Random): SimulatedBoard {
  const share = () => random.between(0.4, 0.9);
  return {
    ...board,
    derivativeOf: random.unit() < 0.3 ? 'error' : 'turning',
    feedforwardFilters: [{ kind: 'first-order', cutoff: random.between(20, 60) }],
    fade:
      random.unit() < 0.25
        ? { from: random.between(0.2, 0.5), proportional: share(), integral: 1, derivative: share() }
        : null,
    shape: random.unit() < 0.3 ? random.between(0.3, 0.8) : 0,
    late: { gyro: random.between(0, 0.0012), output: random.between(0, 0.002) },
  };
}

interface Wish {
  /** Derivative over proportional, s. */
  readonly derivativeTime: number;
  /** Integral over proportional, as a share of the crossover. */
  readonly holding: number;
  /** Feedforward as a share of what would turn the craft as asked without an error. */
  readonly pushing: number;
  /** rad */
  readonly margin: number;
}

function gainsFor(craft: SimulatedCraft, axis: keyof PerAxis, wish: Wish): SimulatedGains {
  const { board } = craft;
  const plain = { proportional: 1, integral: 0, derivative: wish.derivativeTime, feedforward: 0 };
  const gains = { ...board.gains, [axis]: plain };
  const loop = linearLoop(
    { ...craft, board: { ...board, gains, fade: null } },
    axisIndex[axis],
    hoverOf(craft),
  );
  const crossing = crossingWith(loop, wish.margin, 0.4 * board.controlRate);
  // Yaw's reaction would let it be many times quicker than anybody flies it.
  const share = axis === 'yaw' ? 0.4 : 1;
  const proportional = Math.min(most.proportional, share / crossing.gain);
  const slow = 1;
  const authority = sizeOf(loop.body(slow)) * wholeTurn * slow;
  return {
    proportional,
    integral: proportional * wish.holding * wholeTurn * share * crossing.frequency,
    derivative: Math.min(most.derivative, proportional * wish.derivativeTime),
    feedforward: wish.pushing / authority,
  };
}

/** What noise has the motors do at most in the hover, rms, share of their range: louder gains nobody leaves as they are. */
const loudest = 0.02;

/** Less of all gains where tones make the motors rattle. */
function calm(craft: SimulatedCraft, axis: keyof PerAxis, gains: SimulatedGains): SimulatedGains {
  const { board, shaking, motors, propeller } = craft;
  const set = { ...board, gains: { ...board.gains, [axis]: gains } };
  const hover = hoverOf(craft);
  const { seen, held } = linearLoop({ ...craft, board: set }, axisIndex[axis], hover);
  const told = (frequency: number, rms: number) =>
    frequency < board.controlRate / 2 ? rms * sizeOf(seen(frequency)) * sizeOf(held(frequency)) : 0;
  const tones = [
    ...shaking.frame.map(({ frequency, strength }) => told(frequency, strength[axis])),
    ...motors.flatMap(({ shaftTone, bladeTone }, motor) => {
      const turns = (hover.speeds[motor] ?? 0) / wholeTurn;
      return [told(turns, shaftTone / Math.SQRT2), told(propeller.blades * turns, bladeTone / Math.SQRT2)];
    }),
  ];
  const less = Math.min(1, loudest / Math.hypot(...tones));
  return {
    proportional: less * gains.proportional,
    // Slower all over: the integral may be so much slower again.
    integral: less ** 2 * gains.integral,
    derivative: less * gains.derivative,
    feedforward: gains.feedforward,
  };
}

/** Of roll's gains somebody finds numbers of two digits handy. */
function boardFactors(roll: SimulatedGains, random: Random): BoardFactors {
  const of = (gain: number) => (gain > 0 ? gain / random.between(25, 90) : 1e-3);
  return {
    proportional: of(roll.proportional),
    integral: of(roll.integral),
    derivative: of(roll.derivative),
    feedforward: of(roll.feedforward),
  };
}

/** The board's numbers of some gains. */
export function numbersOf(gains: SimulatedGains, factors: BoardFactors): SimulatedGains {
  return {
    proportional: Math.round(gains.proportional / factors.proportional),
    integral: Math.round(gains.integral / factors.integral),
    derivative: Math.round(gains.derivative / factors.derivative),
    feedforward: Math.round(gains.feedforward / factors.feedforward),
  };
}

function rounded(gains: SimulatedGains, factors: BoardFactors): SimulatedGains {
  const numbers = numbersOf(gains, factors);
  return {
    proportional: numbers.proportional * factors.proportional,
    integral: numbers.integral * factors.integral,
    derivative: numbers.derivative * factors.derivative,
    feedforward: numbers.feedforward * factors.feedforward,
  };
}
