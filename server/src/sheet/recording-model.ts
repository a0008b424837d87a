import type { CraftView } from '../craft/view';
import { figureOf } from '../figures';
import { axesOf } from '../figures/axis';
import { type AxisName, axisNames } from '../figures/axis-names';
import { steeringTone } from '../figures/filter-figures';
import { loopOf } from '../figures/loop-state';
import { callAt, stickStepAt, stickStepOf } from '../figures/stick-step';
import { magnitude } from '../physics/complex';
import { chainDelay } from '../physics/filter';
import { answerTo } from '../physics/loop';
import { halfRate } from '../physics/sampling';
import { overshoot, type StepResponse } from '../physics/step-response';
import type { MeasuredSpan } from '../recording/report';

/** What the script lets expect of an axis in the hover, to be drawn over what was measured, and to stand beside it. */
export interface AxisModel {
  readonly axis: AxisName;
  /** `in the hover, pack full` */
  readonly place: string;
  /** From what the sticks ask for to the gyro behind its filters. */
  readonly curve: ModelCurve;
  /** Null where the model swings there. */
  readonly step: ModelStep | null;
  readonly estimates: Readonly<Partial<Record<MeasuredBeside, EstimateBeside>>>;
}

export interface ModelCurve {
  /** Hz, rising. */
  readonly frequencies: readonly number[];
  /** dB */
  readonly gain: readonly number[];
  /** deg, without jumps. */
  readonly phase: readonly number[];
}

export interface ModelStep {
  readonly seconds: readonly number[];
  /** Of what was asked for. */
  readonly share: readonly number[];
}

/** What stands beside a measured value. */
type MeasuredBeside =
  | 'bandwidth'
  | 'peak'
  | 'half'
  | 'delay'
  | 'lag'
  | 'crossover'
  | 'phaseMargin'
  | 'gainMargin'
  | 'overshoot';

export interface EstimateBeside {
  /** In the hover; null where only the sheet's figure is known. */
  readonly inHover: number | null;
  /** Of the build sheet, which looks where it comes nearest to swinging; null where it says nothing of it. */
  readonly figure: MeasuredSpan | null;
  readonly unit: string;
}

/** Hz: from where sticks move to where nothing follows any more. */
const band = { from: 0.5, to: 200 };
const points = 121;
/** s, and moments of it. */
const drawn = { seconds: 0.5, moments: 126 };
const degrees = 180 / Math.PI;

/** Of each axis whose loop is known, in steps between which others get their turn. */
export function* recordingModels(view: CraftView): Generator<void, readonly AxisModel[]> {
  const models: AxisModel[] = [];
  for (const axis of axisNames) {
    axesOf(view, axis);
    yield;
    loopOf(view, axis);
    yield;
    stickStepOf(view, axis);
    yield;
    models.push(...[modelOf(view, axis) ?? []].flat());
    yield;
  }
  return models;
}

function modelOf(view: CraftView, name: AxisName): AxisModel | null {
  const placed = axesOf(view, name)?.value.find(({ point }) => point.throttle === 'hover');
  if (placed === undefined) return null;
  const { axis, place } = placed;
  const call = callAt(view, name, place);
  const rate = view.quantity('control.rate');
  if (call === null || rate === null) return null;
  const to = Math.min(band.to, 0.9 * halfRate(rate));
  const frequencies = Array.from(
    { length: points },
    (_, at) => band.from * (to / band.from) ** (at / (points - 1)),
  );
  const answers = frequencies.map((frequency) => answerTo(axis, call, frequency));
  const gain = answers.map((one) => 20 * Math.log10(Math.max(Number.MIN_VALUE, magnitude(one))));
  const margins = loopOf(view, name)?.value.everywhere.find((one) => one.place === place)?.margins ?? null;
  const response = stickStepAt(view, name, place)?.value ?? null;
  const { gyroFilters, delay } = axis.path;
  const beside = (id: string, unit: string, inHover: number | null): EstimateBeside => {
    const figure = figureOf(view, id);
    return {
      inHover,
      unit,
      figure: figure === null ? null : { likely: figure.likely, low: figure.low, high: figure.high, unit },
    };
  };
  return {
    axis: name,
    place,
    curve: {
      frequencies,
      gain,
      phase: unwrapped(answers.map(({ re, im }) => degrees * Math.atan2(im, re))),
    },
    step: response === null ? null : stepOf(response),
    estimates: {
      bandwidth: { inHover: bandwidthOf(frequencies, gain), figure: null, unit: 'Hz' },
      peak: { inHover: 100 * 10 ** (Math.max(...gain) / 20), figure: null, unit: '%' },
      half: { inHover: response === null ? null : halfOf(response), figure: null, unit: 'ms' },
      delay: {
        inHover: 1e3 * (delay + chainDelay({ filters: gyroFilters }, steeringTone)),
        figure: null,
        unit: 'ms',
      },
      lag: beside('motor-lag', 'ms', 1e3 * axis.motorLag),
      crossover: beside(`${name}-crossover`, 'Hz', margins?.crossover ?? null),
      phaseMargin: beside(
        `${name}-phase-margin`,
        'deg',
        margins === null ? null : degrees * margins.phaseMargin,
      ),
      gainMargin: beside(`${name}-gain-margin`, '', margins?.gainMargin ?? null),
      overshoot: beside(`${name}-overshoot`, '%', response === null ? null : 100 * overshoot(response)),
    },
  };
}

function stepOf({ values, interval }: StepResponse): ModelStep {
  const seconds = Array.from(
    { length: drawn.moments },
    (_, at) => (drawn.seconds * at) / (drawn.moments - 1),
  );
  const share = seconds.map((time) => values[Math.round(time / interval)] ?? values.at(-1) ?? 0);
  return { seconds, share };
}

/** dB: half of the power. */
const halfPower = 10 * Math.log10(0.5);

/** Hz up to which so much comes as a bandwidth is told by; null where it comes all along. */
function bandwidthOf(frequencies: readonly number[], gain: readonly number[]): number | null {
  const after = gain.findIndex((one) => one < halfPower);
  const [low, high] = [frequencies[after - 1], frequencies[after]];
  const [before, below] = [gain[after - 1], gain[after]];
  if (low === undefined || high === undefined || before === undefined || below === undefined) return null;
  return low * (high / low) ** ((before - halfPower) / (before - below));
}

/** ms until half of a call has come; null where it never does. */
function halfOf({ values, interval }: StepResponse): number | null {
  const at = values.findIndex((share) => share >= 0.5);
  return at < 0 ? null : 1e3 * at * interval;
}

/** Angles (deg) that go on where they pass half a turn. */
function unwrapped(angles: readonly number[]): readonly number[] {
  let turns = 0;
  return angles.map((angle, at) => {
    const step = angle - (angles[at - 1] ?? angle);
    turns -= Math.round(step / 360);
    return angle + 360 * turns;
  });
}
