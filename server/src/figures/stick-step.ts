import type { CraftView } from '../craft/view';
import {
  type Closeness,
  type CommandLimits,
  closely,
  loosely,
  quickened,
  type StepResponse,
  type SuddenCall,
  stepResponse,
} from '../physics/step-response';
import type { AxisName } from './axis-names';
import { type Loop, loopOf } from './loop-state';
import { model } from './model';
import type { OperatingPoint } from './operating-points';
import { stickEnd } from './stick-figures';

/** Share of the rate at full stick that a step calls for. */
const called = 0.1;
/** rad/s at full stick where the script says nothing of it: 400 deg/s. Common practice. */
const usualRate = 7;

/** Answers to a small sudden stick where the axis comes nearest to swinging; null for one that swings. */
export interface StickStep {
  readonly likely: StepResponse;
  /** With all doubts turned together. */
  readonly worse: StepResponse | null;
  readonly better: StepResponse | null;
}

/** Null where the loop is not known, or swings. */
export const stickStepOf = model<[name: AxisName], StickStep>('stick step', (own, name) => {
  const loop = loopOf(own, name);
  if (loop === null) return null;
  const { placed, ends } = loop.value;
  const rate = stickEnd(own, name);
  const step = stepOf(own, name, placed.point, rate ?? usualRate);
  if (step === null) return null;
  const likely = answerOf(own, loop.value, step, closely);
  if (likely === null) return null;
  const unsaid = rate === null ? ['a rate of 400 deg/s at full stick'] : [];
  return {
    value: {
      likely,
      worse: answerOf(own, ends.worse, step, loosely),
      better: answerOf(own, ends.better, step, loosely),
    },
    assumed: [...loop.assumed, ...unsaid],
  };
});

function answerOf(
  view: CraftView,
  { axis, margins }: Loop,
  step: SuddenCall,
  how: Closeness,
): StepResponse | null {
  const [gyro, control] = [view.quantity('gyro.rate'), view.quantity('control.rate')];
  if (gyro === null || control === null || margins === null) return null;
  const rates = { gyro, control };
  const { crossover } = margins;
  const isSudden = step.isKicked || step.feedforward !== 0;
  const quick = isSudden ? null : quickened(axis, rates, crossover, how);
  return stepResponse(quick?.axis ?? axis, quick?.rates ?? rates, step, crossover, how);
}

function stepOf(view: CraftView, name: AxisName, point: OperatingPoint, rate: number): SuddenCall | null {
  const feedforward = view.quantity(`control.${name}.feedforward`);
  const input = view.word('derivative.input');
  const limits = limitsOf(view, name, point);
  if (feedforward === null || input === null || limits === null) return null;
  return {
    call: called * rate,
    isKicked: input === 'error',
    feedforward,
    feedforwardCutoff: view.quantityOr('control.feedforward-cutoff', null),
    limits,
  };
}

function limitsOf(view: CraftView, name: AxisName, point: OperatingPoint): CommandLimits | null {
  const integral = view.quantity('control.integral-limit');
  const derivative = view.quantity('derivative.limit');
  if (integral === null || derivative === null) return null;
  const own = view.quantityOr(`control.${name}.limit`, null) ?? 1;
  const rise = view.quantityOr('motor.rise-limit', null);
  return {
    integral,
    derivative,
    command: Math.min(own, roomOf(view, point)),
    rise: rise === null ? Number.POSITIVE_INFINITY : rise / point.outputSlope,
    integralShare: view.quantityOr('control.when.motors-short.integral', null) ?? 1,
  };
}

/** How far two motors can be driven apart, each from the middle: by what gives way where there is no more room. */
function roomOf(view: CraftView, { room: { up, down } }: OperatingPoint): number {
  const [least, most] = [Math.min(up, down), (up + down) / 2];
  switch (ifWord(view, 'control.when.motors-short.gives-way')) {
    case 'lift':
      return most;
    case 'both':
      return (least + most) / 2;
    default:
      return least;
  }
}

function ifWord(view: CraftView, path: string): string | null {
  return view.isSet(path) ? view.word(path) : null;
}
