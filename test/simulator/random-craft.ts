import fc from 'fast-check';
import { type PlausibleCraft, plausibleCraft } from '../support/plausible-craft';
import {
  gravity,
  type PerAxis,
  type SimulatedCraft,
  type SimulatedFilter,
  type SimulatedGains,
  type SimulatedMotor,
  type SimulatedPack,
} from './craft';
import { holdingTorque, hoverSpeeds, voltsFor } from './motors';
import type { Random } from './random';
import type { Recorder } from './recorder';
import { type BoardFactors, tuned } from './tuned';

/** A craft that flies, of the numbers that somebody might build one with, and what ails it. */
export interface RandomCraft {
  readonly numbers: PlausibleCraft;
  readonly craft: SimulatedCraft;
  /** What the board's own whole numbers stand for. */
  readonly factors: BoardFactors;
}

const degree = Math.PI / 180;

/** `rates`: those that its controller may run at, Hz. */
export function randomCraft(random: Random, rates: readonly number[] = [1000, 1600, 2000]): RandomCraft {
  const [sampled] = fc.sample(plausibleCraft, { numRuns: 1, seed: Math.floor(2 ** 31 * random.unit()) });
  const controlRate = random.pick(...rates);
  const base: PlausibleCraft = { ...sampled!, controlRate, gyroRate: controlRate };
  const drawn = withoutGains(base, random);
  const hover = hoverSpeeds(drawn)[0]!;
  const still = { ...drawn, rotorInertia: base.lag * holdingTorque(drawn, hover) };
  const { board, factors } = tuned(still, random);
  const { gains } = board;
  const numbers: PlausibleCraft = {
    ...base,
    gain: gains.roll.proportional,
    integralRate: gains.roll.integral / gains.roll.proportional,
    derivativeTime: gains.roll.derivative / gains.roll.proportional,
    yawGain: gains.yaw.proportional / gains.roll.proportional,
  };
  return { numbers, factors, craft: { ...still, board } };
}

const none: SimulatedGains = { proportional: 0, integral: 0, derivative: 0, feedforward: 0 };

function withoutGains(numbers: PlausibleCraft, random: Random): SimulatedCraft {
  const { gyroRate, controlRate, mass, packMass, propeller, spacing } = numbers;
  const lag = numbers.lag;
  const uneven = random.between(1.1, 1.6);
  const half = spacing / 2 / Math.SQRT2;
  const aside = half * random.between(-0.08, 0.08);
  const ahead = half * random.between(-0.08, 0.08);
  const weak = Math.floor(6 * random.unit());
  const frame = random.between(60, 230);
  const loud = random.factor(0.3, 3);
  const axis = random.pick<PerAxis>(
    { roll: 1, pitch: 0.5, yaw: 0.15 },
    { roll: 0.5, pitch: 1, yaw: 0.15 },
    { roll: 0.3, pitch: 0.3, yaw: 1 },
  );
  const strength = loud * random.factor(0.8, 6) * degree;
  const filter: SimulatedFilter = { kind: 'butterworth', cutoff: numbers.gyroCutoff };
  return {
    mass: mass + packMass,
    density: 1.225 * random.between(0.93, 1.03),
    inertia: numbers.inertia,
    motors: motorsAt(half, { ahead, aside }).map((motor, index) => ({
      ...motor,
      thrustShare: index === weak ? random.between(0.82, 0.95) : random.between(0.98, 1.02),
      shaftTone: loud * random.factor(0.1, 3) * degree,
      bladeTone: loud * random.factor(0.2, 3) * degree,
    })),
    propeller: {
      diameter: propeller,
      blades: 2,
      thrustCoefficient: numbers.thrustCoefficient,
      powerCoefficient: numbers.powerCoefficient,
    },
    winding: {
      speedConstant: 0.935 * numbers.speedConstant,
      resistance: 1.4 * numbers.resistance,
      idleCurrent: 0.8 * numbers.idleCurrent,
    },
    rotorInertia: 0,
    lag: { up: (2 * lag) / (1 + uneven), down: (2 * lag * uneven) / (1 + uneven) },
    output: { idle: 0.06, full: 1 },
    pack: randomPack(numbers, random),
    board: {
      gyroRate,
      controlRate,
      gyroFilters: [filter],
      derivativeFilters: [{ kind: 'butterworth', cutoff: numbers.derivativeCutoff }],
      derivativeOf: 'turning',
      feedforwardFilters: [],
      fade: null,
      shape: 0,
      late: { gyro: 0, output: 0 },
      gains: { roll: none, pitch: none, yaw: none },
    },
    shaking: {
      frame: [
        {
          frequency: frame,
          damping: random.between(0.002, 0.006),
          strength: { roll: axis.roll * strength, pitch: axis.pitch * strength, yaw: axis.yaw * strength },
        },
      ],
      sensor: random.factor(0.004, 0.015) * degree,
      air: loud * random.factor(0.02, 0.08) * degree,
    },
    wind: {
      torque: random.between(0.01, 0.04),
      lift: random.between(0.05, 0.3),
      seconds: random.between(0.2, 0.6),
    },
    link: {
      interval: 1 / random.pick(50, 80, 125, 200),
      lost: random.pick(0, 0.002, 0.02),
      gap: random.pick(0, 0.12, 0.3),
    },
  };
}

/** Ahead left and right, behind left and right; those across from each other turn alike. */
export function motorsAt(
  half: number,
  centre: { readonly ahead: number; readonly aside: number },
  spin: 'inward' | 'outward' = 'inward',
): readonly SimulatedMotor[] {
  return [
    [1, -1],
    [1, 1],
    [-1, -1],
    [-1, 1],
  ].map(([fore, right]) => {
    const isClockwise = fore! * right! < 0 === (spin === 'inward');
    return {
      ahead: fore! * half - centre.ahead,
      aside: right! * half - centre.aside,
      mix: { roll: -right!, pitch: fore!, yaw: isClockwise ? -1 : 1 },
      isClockwise,
      thrustShare: 1,
      shaftTone: 0,
      bladeTone: 0,
    };
  });
}

/** Of its resistance at one second so much more after ten. */
function randomPack(numbers: PlausibleCraft, random: Random): SimulatedPack {
  const { cells, packResistance } = numbers;
  const atOneSecond = packResistance * random.between(1, 1.6);
  const quickShare = random.between(0.12, 0.25);
  const slowShare = random.between(0.18, 0.35);
  const cell = [4.19, 4.08, 3.99, 3.91, 3.84, 3.79, 3.76, 3.73, 3.69, 3.62, 3.1];
  return {
    open: cell.map((volts) => cells * volts),
    capacity: 3600 * random.factor(0.8, 2.5) * (numbers.mass / 0.4),
    used: random.between(0, 0.15),
    atOnce: atOneSecond * (1 - quickShare),
    quick: { resistance: atOneSecond * quickShare, seconds: random.between(0.08, 0.3) },
    slow: { resistance: atOneSecond * slowShare, seconds: random.between(3, 6) },
    standing: random.between(0.2, 0.9),
  };
}

export function randomRecorder(gyroRate: number, rate: number, seconds: number, random: Random): Recorder {
  return {
    rate: gyroRate / Math.round(gyroRate / rate),
    wantedLate: 0,
    outputsLate: random.between(0, 0.001),
    speedsLate: random.between(0, 0.003),
    packEvery: random.between(0.005, 0.03),
    jitter: random.between(0, 0.05) / rate,
    gaps:
      random.unit() < 0.3
        ? [{ from: seconds * random.between(0.3, 0.8), seconds: random.between(0.02, 0.4) }]
        : [],
    voltageNoise: random.between(0.005, 0.02),
    currentNoise: random.between(0.05, 0.2),
    currentOffset: random.between(-0.1, 0.1),
  };
}

/** Whether a flight of it comes to something: not all craft that can be drawn can hover well below full throttle. */
export function canFly(craft: SimulatedCraft): boolean {
  const volts = 0.85 * craft.pack.open[0]!;
  const needs = hoverSpeeds(craft).map((speed) => voltsFor(craft, speed) / volts);
  return needs.every((share) => share < 0.62) && craft.mass * gravity > 0;
}
