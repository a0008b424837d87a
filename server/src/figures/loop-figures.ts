import type { CraftView } from '../craft/view';
import { magnitude, type Polar, polar } from '../physics/complex';
import { chainDelay, chainGain, chainPhase } from '../physics/filter';
import { type Axis, controller, delayPhase, type Margins, margins, openLoop } from '../physics/loop';
import { overshoot, type StepResponse, stepResponse } from '../physics/step-response';
import { axisNames, axisOf } from './axis';
import type { Computed, FigureSource } from './figure';
import { chainsOf } from './filter-chain';
import { strays } from './filter-figures';
import { turnsAt } from './turning';
import { estimate } from './uncertain';

/** Hz: where loops of craft this small can cross. */
const band = { from: 0.5, to: 300 };
/** s: what is drawn of the answer to a step. */
export const watched = 0.25;
/**
 * s: what is watched of a step for its overshoot, or one period of the crossover where that is longer. Where the
 * derivative crosses over, the rate climbs slowly behind it, and is too high long after the crossover's first swing.
 */
const settling = 0.5;
const degrees = 180 / Math.PI;

interface LoopFigure {
  readonly id: string;
  readonly title: string;
  readonly unit: string;
  readonly isSigned?: boolean;
  /** Whether body and motors have no part in it, and what is not known of them does not move it. */
  readonly isOfControllerAlone?: boolean;
  readonly measure: (axis: Axis, view: CraftView) => number | null;
  readonly why: string;
}

const loopFigureList: readonly LoopFigure[] = [
  {
    id: 'crossover',
    title: 'Crossover',
    unit: 'Hz',
    measure: (axis) => marginsOf(axis).crossover,
    why: 'where the gain of the open loop falls through 1',
  },
  {
    id: 'phase-margin',
    title: 'Phase margin',
    unit: 'deg',
    isSigned: true,
    measure: (axis) => {
      const { phaseMargin } = marginsOf(axis);
      return phaseMargin === null ? null : degrees * phaseMargin;
    },
    why: '180 deg + phase of the open loop at the crossover',
  },
  {
    id: 'delay-phase',
    title: 'Phase lost to delay',
    unit: 'deg',
    measure: (axis) => {
      const { crossover } = marginsOf(axis);
      if (crossover === null) return null;
      const filters = chainDelay({ filters: axis.gyroFilters }, crossover);
      return degrees * delayPhase(crossover, axis.delay + filters);
    },
    why: '360 deg × crossover × (delays + filters of the gyro)',
  },
  {
    id: 'gain-margin',
    title: 'Gain margin',
    unit: '',
    measure: (axis) => marginsOf(axis).gainMargin,
    why: '1 / gain of the open loop where its phase is -180 deg',
  },
  {
    id: 'overshoot',
    title: 'Overshoot of a stick step',
    unit: '%',
    measure: (axis, view) => {
      const { crossover } = marginsOf(axis);
      const response = crossover === null ? null : stepOf(axis, view, Math.max(settling, 1 / crossover));
      return response === null ? null : 100 * overshoot(response);
    },
    why: 'highest point after a small sudden stick movement, simulated once a round of the loop',
  },
  {
    id: 'noise-gain',
    title: 'Motor noise passed on',
    unit: '%',
    isOfControllerAlone: true,
    measure: (axis, view) => {
      const turns = turnsAt(view, 'hover')?.likely;
      const chains = chainsOf(view)?.value;
      if (turns === undefined || chains === undefined) return null;
      const heard = { ...axis, gyroFilters: chains.gyro.own(turns) };
      // A motor is never quite where its notch was set.
      return (100 * magnitude(controller(heard, (1 + strays.usual) * turns))) / degrees;
    },
    why: 'command for a tremble of 1 deg/s at the motor tone in the hover: filters and gains',
  },
];

/** The answer to a small step over a time in s, simulated once a round of the loop where that is enough. */
export function stepOf(axis: Axis, view: CraftView, length: number): StepResponse | null {
  const gyro = view.quantity('gyro.rate');
  const control = view.quantity('control.rate');
  const { crossover, phaseMargin } = marginsOf(axis);
  if (gyro === null || control === null || control > gyro || crossover === null) return null;
  // What swings by itself has no step response to speak of.
  if (phaseMargin === null || phaseMargin <= 0) return null;
  const quick = waitingForFilters(axis, crossover);
  const rates = { gyro: quick === null ? gyro : control, control };
  return stepResponse(quick ?? axis, rates, length);
}

/** The gain of filters that change nothing about how the loop moves lies within this of 1, so many times above it. */
const untouched = { gain: 0.1, times: 3 };

/**
 * The axis with its gyro filters as the wait that they are at the crossover: much quicker to simulate. Null where
 * they do more than wait to what the loop moves.
 */
export function waitingForFilters(axis: Axis, crossover: number): Axis | null {
  const chain = { filters: axis.gyroFilters };
  const gain = chainGain(chain, untouched.times * crossover);
  if (Math.abs(gain - 1) > untouched.gain) return null;
  const wait = -chainPhase(chain, crossover) / (2 * Math.PI * crossover);
  return { ...axis, gyroFilters: [], delay: axis.delay + wait };
}

const marginWords = (figure: string) => `phase margin ${figure}`;

/** The same axis is asked for its crossover, its phase and its gain. */
const known = new WeakMap<Axis, Margins>();
/** By gains and step of the grid: an axis and what its doubts make of it have the same controller. */
const controls = new WeakMap<Axis['gains'], Polar[]>();

function marginsOf(axis: Axis): Margins {
  const found =
    known.get(axis) ??
    margins((frequency, step) => openLoop(axis, frequency, controlOf(axis, frequency, step)), band);
  known.set(axis, found);
  return found;
}

function controlOf(axis: Axis, frequency: number, step: number | undefined): Polar {
  if (step === undefined) return polar(controller(axis, frequency));
  const kept = controls.get(axis.gains) ?? [];
  controls.set(axis.gains, kept);
  const control = kept[step] ?? polar(controller(axis, frequency));
  kept[step] = control;
  return control;
}

export const loopFigures: readonly FigureSource[] = axisNames.flatMap((name) =>
  loopFigureList.map(
    ({ id, title, unit, isSigned = false, isOfControllerAlone = false, measure, why }): FigureSource => {
      const parts = ['proportional', 'integral', 'derivative'];
      const gains = [name, 'when.high-throttle'].flatMap((at) =>
        parts.map((part) => `control.${at}.${part}`),
      );
      return {
        id: `${name}-${id}`,
        title: `${title}: ${name}`,
        unit,
        isSigned,
        ...(id === 'phase-margin'
          ? { hint: { at: [`control.${name}.proportional`], words: marginWords } }
          : {}),
        from: [...gains, 'gyro.filter.<number>.cutoff', 'motor.response-time', 'craft.motor-spacing'],
        compute(view): Computed | null {
          const model = axisOf(view, name);
          if (model === null) return null;
          const { likely, turned } = model.value;
          const doubted = { likely, turned: isOfControllerAlone ? [] : turned };
          const found = estimate(doubted, (axis) => measure(axis, view));
          return found === null ? null : { ...found, why, assumed: model.assumed };
        },
      };
    },
  ),
);
