import type { CraftView } from '../craft/view';
import { add, angle, type Complex, magnitude, times, zero } from '../physics/complex';
import { chainDelay, chainGain, chainResponse, type DigitalFilter } from '../physics/filter';
import { controller, type FilteredTone, filteredTone } from '../physics/loop';
import { turnsPerSecond } from '../physics/motor';
import { axesOf } from './axis';
import { type AxisName, axisNames } from './axis-names';
import { lowpassAt, type Working, workingOf } from './filter-chain';
import { steeringTone, strays } from './filter-figures';
import {
  type ChainName,
  isSaid,
  isUnfiltered,
  kindOf,
  lowpassCutoff,
  type Stage,
  stagesOf,
} from './filter-stages';
import { loopOf } from './loop-state';
import { turnsAt } from './turning';

/** What the craft's own filters let through of one motor's tone in the hover, and what other cutoffs would. */
export interface NoiseThrough {
  /** Hz */
  readonly tone: number;
  /** Each filter that is on, with the share of the tone that it lets through by itself. */
  readonly filters: readonly { readonly stage: Stage; readonly through: number }[];
  /** What reaches the motors behind all of them. */
  readonly left: NoiseLeft;
  readonly changes: readonly CutoffChange[];
}

/** With an axis: what that axis, on which it is most, makes of it, % of throttle for each deg/s; without gains: a share. */
export interface NoiseLeft {
  readonly axis: AxisName | null;
  readonly amount: number;
}

/** A cutoff with which the motors would get so much less of the noise that it heats them half as much. */
export interface CutoffChange {
  readonly stage: Stage;
  /** Hz */
  readonly to: number;
  readonly left: number;
  /** s of delay at the steering tone. */
  readonly delay: number;
  /** rad that the controller's phase falls by at the crossover; null without one. */
  readonly phase: number | null;
}

/** A current heats by its square (Joule's law): half the heat comes of this share of it. */
const halfTheHeat = Math.SQRT1_2;

/** Null while filters or the motors' tone are not known; the view takes note of what it takes. */
export function noiseThrough(view: CraftView): NoiseThrough | null {
  const turns = turnsAt(view, 'hover')?.likely ?? null;
  if (turns === null) return null;
  const read: Read = {
    view,
    turns,
    gyro: readChain(view, 'gyro'),
    derivative: readChain(view, 'derivative'),
  };
  const left = leftOf(read);
  if (left === null) return null;
  const both = [...(read.gyro ?? []), ...(read.derivative ?? [])];
  const on = both.filter(({ stage }) => kindOf(view, stage) !== 'none');
  const filters = on.map(({ stage, working }) => ({
    stage,
    through: loudest(working?.own(turns) ?? [], turns),
  }));
  const changes = on.flatMap(({ stage }) => changeOf(read, stage, left) ?? []);
  return { tone: turns, filters, left, changes };
}

/** What is read once: the search for a cutoff asks for it again and again. */
interface Read {
  readonly view: CraftView;
  /** Of a motor in the hover, a second. */
  readonly turns: number;
  readonly gyro: ReadChain;
  readonly derivative: ReadChain;
}

/** Its filters in order, each with what it does where that is known; null: nothing is said of them. */
type ReadChain = readonly { readonly stage: Stage; readonly working: Working | undefined }[] | null;

function readChain(view: CraftView, chain: ChainName): ReadChain {
  if (isUnfiltered(view, chain)) return [];
  if (!isSaid(view, chain)) return null;
  return stagesOf(view, chain).map((stage) => ({ stage, working: workingOf(view, stage)?.value }));
}

/** A motor is never quite where its notch was set. */
function strayed(turns: number): number {
  return (1 + strays.usual) * turns;
}

/** Hz: where that motor may then be. */
function met(turns: number): readonly number[] {
  return [(1 - strays.usual) * turns, strayed(turns)];
}

/** Share of it that passes, wherever that motor then is. */
function loudest(filters: readonly DigitalFilter[], turns: number): number {
  return Math.max(...met(turns).map((tone) => chainGain({ filters }, tone)));
}

/** A filter in place of one of the craft's. */
interface Changed {
  readonly stage: Stage;
  readonly filters: readonly DigitalFilter[];
}

/** `own`: those that surely meet the tone of one motor; null: what they are is not known. */
function filtersOf(
  chain: ReadChain,
  which: 'own' | 'all',
  turns: number,
  changed: Changed | null,
): readonly DigitalFilter[] | null {
  if (chain === null) return null;
  const all: DigitalFilter[] = [];
  for (const { stage, working } of chain) {
    const filters = stage.path === changed?.stage.path ? changed.filters : working?.[which](turns);
    if (filters === undefined) return null;
    all.push(...filters);
  }
  return all;
}

/** On the axis and at the place where it is most, as the figure of that axis has it; by the gyro's filters alone without gains. */
function leftOf({ view, turns, gyro }: Read): NoiseLeft | null {
  let most: NoiseLeft | null = null;
  for (const axis of axisNames)
    for (const {
      axis: { gains },
      toneAt,
    } of axesOf(view, axis)?.value ?? []) {
      const amount = movedBy(controller(gains, toneAt(1)));
      if (most === null || amount > most.amount) most = { axis, amount };
    }
  if (most !== null) return most;
  const filters = filtersOf(gyro, 'own', turns, null);
  return filters === null ? null : { axis: null, amount: loudest(filters, turns) };
}

/** Percent of throttle for each deg/s, of a command for each rad/s. */
function movedBy(command: Complex): number {
  return (100 * magnitude(command) * Math.PI) / 180;
}

/** What comes of a tone (Hz) where one filter is out: so much in any case, and so much of what that filter lets through. */
interface Apart {
  readonly tone: number;
  readonly always: Complex;
  readonly through: Complex;
}

/** At every place of every axis; at the gyro's filters alone where no axis is known. */
function apartFrom(read: Read, stage: Stage): readonly Apart[] {
  const { view, turns } = read;
  const without = { stage, filters: [] };
  const axes = axisNames.flatMap((axis) => axesOf(view, axis)?.value ?? []);
  if (axes.length > 0)
    return axes.map(({ axis: { gains }, point }) => {
      const speed = turnsPerSecond(point.state.motor.speed);
      const at = toneFor(read, { speed, at: strayed(speed) }, 'own', without);
      if (stage.chain === 'gyro') return { tone: at.frequency, always: zero, through: controller(gains, at) };
      const { proportional, integral, derivative } = gains;
      return {
        tone: at.frequency,
        always: controller({ proportional, integral, derivative: 0 }, at),
        through: controller({ proportional: 0, integral: 0, derivative }, at),
      };
    });
  return met(turns).map((tone) => {
    const passed = chainResponse({ filters: filtersOf(read.gyro, 'own', turns, without) ?? [] }, tone);
    const [always, through] = stage.chain === 'gyro' ? [zero, passed] : [passed, zero];
    return { tone, always, through };
  });
}

/** What filters make of a tone (Hz), with the motors at a speed in turns a second. */
function toneFor(
  { gyro, derivative }: Read,
  { speed, at }: { readonly speed: number; readonly at: number },
  which: 'own' | 'all',
  changed: Changed | null,
): FilteredTone {
  const gyroFilters = filtersOf(gyro, which, speed, changed) ?? [];
  const derivativeFilters = filtersOf(derivative, 'all', speed, changed) ?? [];
  return filteredTone({ gyroFilters, derivativeFilters }, at);
}

/** The highest cutoff in whole hertz that does it; null for other kinds of filters, and where none above the steering tone does. */
function changeOf(read: Read, stage: Stage, now: NoiseLeft): CutoffChange | null {
  const { view } = read;
  const [cutoff, rate] = [lowpassCutoff(view, stage), view.quantity(stage.rate)];
  if (cutoff === null || rate === null) return null;
  const kind = kindOf(view, stage);
  const filtersAt = (to: number) => ({ filters: lowpassAt(to, kind, rate) });
  const apart = apartFrom(read, stage);
  const share = now.axis === null ? magnitude : movedBy;
  // All but this filter stays as it is: of each try only what that lets through is asked.
  const leftAt = (to: number) => {
    const tried = filtersAt(to);
    return Math.max(
      ...apart.map(({ tone, always, through }) =>
        share(add(always, times(through, chainResponse(tried, tone)))),
      ),
    );
  };
  const enough = halfTheHeat * now.amount;
  let [low, high] = [steeringTone, Math.ceil(cutoff)];
  if (low >= high || leftAt(low) > enough) return null;
  while (high - low > 1) {
    const middle = Math.floor((low + high) / 2);
    if (leftAt(middle) > enough) high = middle;
    else low = middle;
  }
  const changed = { stage, ...filtersAt(low) };
  const own = filtersAt(cutoff);
  return {
    stage,
    to: low,
    left: leftAt(low),
    delay: chainDelay(changed, steeringTone) - chainDelay(own, steeringTone),
    phase: now.axis === null ? null : phaseLost(read, now.axis, changed),
  };
}

/** rad by which the controller runs later where the loop is nearest to swinging. */
function phaseLost(read: Read, name: AxisName, changed: Changed): number | null {
  const loop = loopOf(read.view, name)?.value;
  if (loop === undefined || loop.margins === null) return null;
  const { axis, point } = loop.placed;
  const speed = turnsPerSecond(point.state.motor.speed);
  const at = loop.margins.crossover;
  const turned = (one: Changed | null) =>
    angle(controller(axis.gains, toneFor(read, { speed, at }, 'all', one)));
  const lost = turned(null) - turned(changed);
  return lost - 2 * Math.PI * Math.round(lost / (2 * Math.PI));
}
