import type { Craft } from '../../craft/craft';
import { CraftView } from '../../craft/view';
import { axesOf, type PlacedAxis } from '../../figures/axis';
import { type AxisName, axisNames } from '../../figures/axis-names';
import { steeringTone } from '../../figures/filter-figures';
import { magnitude } from '../../physics/complex';
import { chainDelay } from '../../physics/filter';
import { type Axis, openLoop } from '../../physics/loop';
import type { FlownLoop, MeasuredLoops } from '../../recording/measured-flight';
import type { MeasuredAnswer, MeasuredSpan } from '../../recording/report';
import { shortNumber, withUnit } from '../../units/number-text';

/** How a measured flight turns the model of an axis, wherever it is looked at. */
export interface AxisShift {
  readonly lag: number;
  readonly authority: number;
}

/** How it turns the model of a craft. */
export interface LoopShift {
  /** s: what waits longer than the model has it, in front of all axes. */
  readonly wait: number;
  readonly axes: ReadonlyMap<AxisName, AxisShift>;
  /** What is taken from the flight, as the rest of a sentence each; none: all of it is the model's. */
  readonly taken: readonly string[];
}

/** Nothing that was measured turns a model by more: then something else is wrong. Ours. */
const most = 5;

/** What a flight says of the loops, against the model in the hover with the pack that was flown. */
export function loopShift(craft: Craft, { pack, axes }: MeasuredLoops): LoopShift {
  const view = new CraftView(craft, pack);
  const hovering = new Map(axisNames.flatMap((name) => hoverOf(view, name)));
  const known = axes.flatMap((measured) => {
    const axis = hovering.get(measured.axis);
    return axis === undefined ? [] : [{ measured, axis }];
  });
  const { wait, taken } = waitOf(known);
  const shifts = known.map(({ measured, axis }) => ({
    name: measured.axis,
    ...shiftOf(measured, axis, wait),
  }));
  return {
    wait,
    axes: new Map(shifts.map(({ name, lag, authority }) => [name, { lag, authority }])),
    taken: [...shifts.flatMap((one) => one.taken), ...taken],
  };
}

function hoverOf(view: CraftView, name: AxisName): readonly (readonly [AxisName, Axis])[] {
  const placed = axesOf(view, name)?.value.find(({ point }) => point.throttle === 'hover');
  return placed === undefined ? [] : [[name, placed.axis]];
}

interface KnownLoop {
  readonly measured: FlownLoop;
  readonly axis: Axis;
}

/** All axes wait alike: the mean of what they tell, where the model's wait lies outside of it. */
function waitOf(known: readonly KnownLoop[]): Pick<LoopShift, 'wait' | 'taken'> {
  const told = known.flatMap(({ measured: { delay }, axis: { path } }) => {
    const modelled = 1e3 * (path.delay + chainDelay({ filters: path.gyroFilters }, steeringTone));
    return delay === null ? [] : [{ delay, modelled }];
  });
  const outside = told.filter(({ delay, modelled }) => modelled < delay.low || modelled > delay.high);
  // An axis that agrees with the model leaves no reason to doubt it.
  if (told.length === 0 || outside.length < told.length) return { wait: 0, taken: [] };
  const mean = (of: (one: (typeof told)[number]) => number) =>
    told.reduce((sum, one) => sum + of(one), 0) / told.length;
  const [measured, modelled] = [mean(({ delay }) => delay.likely), mean((one) => one.modelled)];
  return {
    wait: 1e-3 * (measured - modelled),
    taken: [`a wait of ${inUnit(measured, 'ms')} (model ${inUnit(modelled, 'ms')})`],
  };
}

function shiftOf({ axis: name, lag, crossover }: FlownLoop, axis: Axis, wait: number) {
  const lagFactor = lag === null ? 1 : ratio(1e-3 * lag.likely, axis.motorLag);
  const turned = turnedAxis(axis, { lag: lagFactor, authority: 1 }, wait);
  const gain = crossover === null ? 1 : magnitude(openLoop(turned, crossover.likely));
  const authority = ratio(1, gain);
  return {
    lag: lagFactor,
    authority,
    taken: [
      ...(lag === null || lagFactor === 1
        ? []
        : [`a lag of ${spanText(lag)} about ${name} (model ${inUnit(1e3 * axis.motorLag, 'ms')})`]),
      ...(crossover === null || authority === 1
        ? []
        : [`${shortNumber(authority, 2)} times the model’s strength about ${name}`]),
    ],
  };
}

/** 1 where it is beyond belief. */
function ratio(one: number, other: number): number {
  const by = one / other;
  return by > 1 / most && by < most ? by : 1;
}

function spanText({ likely, unit }: MeasuredSpan): string {
  return inUnit(likely, unit);
}

function inUnit(value: number, unit: string): string {
  return withUnit(shortNumber(value), unit);
}

function turnedAxis(axis: Axis, { lag, authority }: AxisShift, wait: number): Axis {
  return {
    ...axis,
    authority: authority * axis.authority,
    // The same inertia lags and reacts.
    motorLag: lag * axis.motorLag,
    reactionLead: lag * axis.reactionLead,
    path: { ...axis.path, delay: Math.max(0, axis.path.delay + wait) },
  };
}

/** An axis at a place as the flight has it; the same one where nothing was measured. */
export function shiftedBy(shift: LoopShift | null, name: AxisName, placed: PlacedAxis): PlacedAxis {
  if (shift === null) return placed;
  const own = shift.axes.get(name) ?? { lag: 1, authority: 1 };
  return { ...placed, axis: turnedAxis(placed.axis, own, shift.wait) };
}

/** What margins are looked for with; a sentence. */
export function loopText(loops: MeasuredAnswer<MeasuredLoops>, shift: LoopShift | null): string {
  if ('reason' in loops)
    return `Margins are those of the modelled craft, not of the measured one: ${loops.reason} ${loops.advice}`;
  if (shift === null || shift.taken.length === 0)
    return `Margins are those of the modelled craft: what ${loops.told.name} shows of its waits agrees with it.`;
  return `Margins are looked for with what ${loops.told.name} shows of the craft, at every place in proportion: ${shift.taken.join('; ')}. What of it was not told is the model’s, and so are figures and findings.`;
}
