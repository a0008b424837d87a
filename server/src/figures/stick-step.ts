import type { CraftView } from '../craft/view';
import { firstOrderLowpass } from '../physics/filter';
import type { Call } from '../physics/loop';
import { halfRate } from '../physics/sampling';
import {
  type Closeness,
  type CommandLimits,
  closely,
  loosely,
  overshoot,
  quickened,
  type Rates,
  reachOf,
  type StepResponse,
  type SuddenCall,
  stepResponse,
} from '../physics/step-response';
import type { AxisName } from './axis-names';
import { type Loop, loopOf } from './loop-state';
import { model } from './model';
import { type OperatingPoint, pointAt } from './operating-points';
import { stickEnd } from './stick-figures';

/** Share of the rate at full stick that a step calls for. */
const called = 0.1;
/** rad/s at full stick where the script says nothing of it: 400 deg/s. Common practice. */
const usualRate = 7;

/** Answers to a small sudden stick where the axis comes nearest to swinging; null for one that swings. */
export interface StickStep {
  readonly likely: StepResponse;
  /** With all doubts turned together: by how much each goes over what was asked for; null for one that swings. */
  readonly worse: number | null;
  readonly better: number | null;
}

/** Null where the loop is not known, or swings. */
export const stickStepOf = model<[name: AxisName], StickStep>('stick step', (own, name) => {
  const loop = loopOf(own, name);
  if (loop === null) return null;
  const { placed, ends } = loop.value;
  const step = stepOf(own, name, placed.point.place);
  if (step === null) return null;
  const likely = answerOf(loop.value, step.value, closely);
  if (likely === null) return null;
  return {
    value: {
      likely,
      worse: overshootOf(answerOf(ends.worse, step.value, loosely)),
      better: overshootOf(answerOf(ends.better, step.value, loosely)),
    },
    assumed: [...step.assumed, ...loop.assumed],
  };
});

/** The answer to the same stick at one of the places that are looked at; null where the loop is not known, or swings. */
export const stickStepAt = model<[name: AxisName, place: string], StepResponse>(
  'stick step at a place',
  (own, name, place) => {
    const loop = loopOf(own, name)?.value.everywhere.find((one) => one.place === place);
    const step = loop === undefined ? null : stepOf(own, name, place);
    const answer = loop === undefined || step === null ? null : answerOf(loop, step.value, closely);
    return answer === null ? null : { value: answer, assumed: step?.assumed ?? [] };
  },
);

/** What a call for a turning rate does at a place, beside what the gyro says. */
export function callAt(view: CraftView, name: AxisName, place: string): Call | null {
  const step = stepOf(view, name, place);
  if (step === null) return null;
  const { isKicked, feedforward, feedforwardCutoff: cutoff, rates } = step.value;
  const isFiltered = cutoff !== null && cutoff < halfRate(rates.control);
  return {
    isKicked,
    feedforward,
    feedforwardFilters: isFiltered ? [firstOrderLowpass(cutoff, rates.control)] : [],
  };
}

function answerOf({ axis, margins }: Loop, step: Step, how: Closeness): StepResponse | null {
  if (margins === null) return null;
  const { crossover, gainMarginAt } = margins;
  const { rates } = step;
  const isSudden = step.isKicked || step.feedforward !== 0;
  const quick = isSudden ? null : quickened(axis, rates, crossover, how, reachOf(crossover, gainMarginAt));
  return stepResponse(quick?.axis ?? axis, quick?.rates ?? rates, step, crossover, how);
}

/** As a share of what was asked for; null for one that swings, or that has no answer. */
export function overshootOf(response: StepResponse | null): number | null {
  return response?.isSettled === true ? overshoot(response) : null;
}

/** A sudden stick, and how often it is looked at. */
interface Step extends SuddenCall {
  readonly rates: Rates;
}

/** No filter changes anything about it. */
const stepOf = model<[name: AxisName, place: string], Step>('sudden stick', (own, name, place) => {
  const point = pointAt(own, place);
  const [gyro, control] = [own.quantity('gyro.rate'), own.quantity('control.rate')];
  const feedforward = own.quantity(`control.${name}.feedforward`);
  const input = own.word('derivative.input');
  const limits = point === undefined ? null : limitsOf(own, name, point);
  if (gyro === null || control === null || feedforward === null || input === null || limits === null)
    return null;
  const rate = stickEnd(own, name);
  return {
    value: {
      call: called * (rate ?? usualRate),
      isKicked: input === 'error',
      feedforward,
      feedforwardCutoff: own.quantityOr('control.feedforward-cutoff', null),
      limits,
      rates: { gyro, control },
    },
    assumed: rate === null ? ['a rate of 400 deg/s at full stick'] : [],
  };
});

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
