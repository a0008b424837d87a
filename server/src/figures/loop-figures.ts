import type { CraftView } from '../craft/view';
import { magnitude } from '../physics/complex';
import { chainDelay } from '../physics/filter';
import { controller, delayPhase } from '../physics/loop';
import { swingOf } from '../physics/stability';
import { axesOf, gainSettings } from './axis';
import { type AxisName, axisNames } from './axis-names';
import { beyondModel } from './beyond-model';
import type { Computed, FigureSource } from './figure';
import { between } from './filter-figures';
import { gainSpan, type Loop, type LoopState, loopOf } from './loop-state';
import { overshootOf, stickStepOf } from './stick-step';
import { turnsAt } from './turning';
import { estimateAbout } from './uncertain';
import { fine } from './why';

const degrees = 180 / Math.PI;

interface LoopFigure {
  readonly id: string;
  readonly title: string;
  readonly unit: string;
  readonly tellsPlace?: boolean;
  readonly isFault?: boolean;
  readonly compute: (view: CraftView, axis: AxisName) => Computed | null;
}

const loopFigureList: readonly LoopFigure[] = [
  {
    id: 'swings',
    title: 'Swings by itself at',
    unit: 'Hz',
    tellsPlace: true,
    isFault: true,
    compute: ofLoop(swings),
  },
  { id: 'crossover', title: 'Crossover at the worst place', unit: 'Hz', compute: ofLoop(crossover) },
  {
    id: 'phase-margin',
    title: 'Phase margin at the worst place',
    unit: 'deg',
    tellsPlace: true,
    compute: ofLoop(phaseMargin),
  },
  {
    id: 'delay-phase',
    title: 'Phase lost to delay at the worst place',
    unit: 'deg',
    compute: ofLoop(delayLoss),
  },
  { id: 'gain-margin', title: 'Gain margin at the worst place', unit: '', compute: ofLoop(gainMargin) },
  {
    id: 'overshoot',
    title: 'Overshoot of a stick step at the worst place',
    unit: '%',
    compute: stickOvershoot,
  },
  {
    id: 'noise-gain',
    title: 'Motor noise passed on where it is most',
    unit: '%',
    tellsPlace: true,
    compute: noiseGain,
  },
];

/** A figure of the loop where it comes nearest to swinging. */
function ofLoop(compute: (loop: LoopState) => Computed | null): LoopFigure['compute'] {
  return (view, axis) => {
    const loop = loopOf(view, axis);
    const computed = loop === null ? null : compute(loop.value);
    return loop === null || computed === null
      ? null
      : { place: loop.value.placed.place, ...computed, assumed: loop.assumed };
  };
}

function swings(loop: LoopState): Computed | null {
  if (loop.stability.verdict !== 'swings') return null;
  const likely = swingOf(loop.stability);
  const others = loop.doubted.flatMap(({ stability }) =>
    stability.verdict === 'swings' ? [swingOf(stability)] : [],
  );
  return {
    likely,
    low: Math.min(likely, ...others),
    high: Math.max(likely, ...others),
    why: 'the open loop goes round -1: its phase is -180 deg there with a gain above 1',
  };
}

/** Where the gain stays near 1, the crossover hops from end to end of a band: it is told from the lowest to the highest. */
function crossover(loop: LoopState): Computed | null {
  if (loop.margins === null) return null;
  const all = [loop, ...loop.doubted].flatMap(({ stability }) => stability.crossovers);
  const frequencies = all.map(({ frequency }) => frequency);
  const own = loop.stability.crossovers.map(({ frequency }) => `${round(frequency)} Hz`);
  return {
    likely: loop.margins.crossover,
    low: Math.min(...frequencies),
    high: Math.max(...frequencies),
    why:
      own.length === 1
        ? 'where the gain of the open loop falls through 1'
        : `the gain of the open loop passes 1 at ${own.join(', ')}: the least phase is left at this one`,
  };
}

/** Words for the end of a span where the loop may swing by itself. */
const swinging = 'swinging';

function phaseMargin(loop: LoopState): Computed | null {
  if (loop.margins === null) return null;
  const likely = degrees * loop.margins.phaseMargin;
  const { low, high } = estimateAbout(likely, loop.turned, ({ margins }) =>
    margins === null ? 0 : degrees * margins.phaseMargin,
  );
  return {
    likely,
    high: Math.min(180, high),
    ...(loop.maySwing ? { low: 0, lowWords: swinging } : { low }),
    why: `180 deg + phase of the open loop at the crossover; ${atPlaces(loop, ({ margins }) => (margins === null ? null : `${round(degrees * margins.phaseMargin)} deg`))}`,
  };
}

function gainMargin(loop: LoopState): Computed | null {
  const likely = loop.margins?.gainMargin ?? null;
  if (likely === null) return null;
  const { low, high } = gainSpan(likely, loop.turned);
  return {
    likely,
    high,
    ...(loop.maySwing ? { low: 1, lowWords: swinging } : { low }),
    why: `1 / gain of the open loop at ${round(loop.margins?.gainMarginAt ?? 0)} Hz, where its phase is -180 deg; ${atPlaces(loop, ({ margins }) => (margins?.gainMargin == null ? null : round(margins.gainMargin)))}`,
  };
}

/** The same at every place: `in the hover, pack full: 48 deg; …`. */
function atPlaces(loop: LoopState, told: (loop: Loop) => string | null): string {
  const places = loop.everywhere.map((one) => `${one.place}: ${told(one) ?? swingsOrNot(one)}`);
  return places.join('; ');
}

function swingsOrNot({ stability }: Loop): string {
  return stability.verdict === 'swings' ? 'swings' : 'not known';
}

function delayLoss(loop: LoopState): Computed | null {
  if (loop.margins === null) return null;
  const { gyroFilters, delay } = loop.axis.path;
  const { crossover } = loop.margins;
  const waitAt = (frequency: number) => delay + chainDelay({ filters: gyroFilters }, frequency);
  const lost = (frequency: number) => degrees * delayPhase(frequency, waitAt(frequency));
  const likely = lost(crossover);
  const { low, high } = estimateAbout(likely, loop.turned, ({ stability, margins }) =>
    lost(margins?.crossover ?? stability.crossovers.at(-1)?.frequency ?? crossover),
  );
  return {
    likely,
    low: Math.max(0, low),
    high,
    why: `360 deg × ${fine(crossover, 'Hz')} × ${fine(waitAt(crossover), 'ms')}, crossover by delays and filters of the gyro`,
  };
}

function stickOvershoot(view: CraftView, axis: AxisName): Computed | null {
  const loop = loopOf(view, axis);
  const step = stickStepOf(view, axis);
  const likely = overshootOf(step?.value.likely ?? null);
  if (loop === null || step === null || likely === null) return null;
  const { worse, better } = step.value;
  const all = [likely, worse ?? likely, better ?? likely].map((share) => 100 * share);
  const isOpen = worse === null || loop.value.maySwing;
  return {
    likely: 100 * likely,
    low: Math.min(...all),
    high: Math.max(...all),
    ...(isOpen ? { highWords: swinging } : {}),
    place: loop.value.placed.place,
    why: 'highest point after the stick jumps by a tenth of its full rate in still air, simulated with all limits until it settles',
    assumed: step.assumed,
  };
}

function noiseGain(view: CraftView, name: AxisName): Computed | null {
  const axes = axesOf(view, name);
  if (axes === null) return null;
  let most = { place: '', gain: Number.NEGATIVE_INFINITY, noise: (_: number): number => 0 };
  for (const { axis, place, toneAt } of axes.value) {
    const noise = (share: number) => (100 * magnitude(controller(axis.gains, toneAt(share)))) / degrees;
    const gain = noise(1);
    if (gain > most.gain) most = { place, gain, noise };
  }
  const all = [most.gain, ...toneShares(view).map(most.noise)];
  return {
    likely: most.gain,
    low: Math.min(...all),
    high: Math.max(...all),
    place: most.place,
    why: 'command for a tremble of 1 deg/s at the motor tone: filters and gains',
    assumed: [most.place, ...axes.assumed],
  };
}

/** The tone is a guess, and is as far off at every place as in the hover: shares of what is likely. */
function toneShares(view: CraftView): readonly number[] {
  const tone = turnsAt(view, 'hover');
  if (tone === null) return [];
  const { likely, low = likely, high = likely } = tone;
  return between(low / likely, high / likely, 4);
}

/** Why an axis has no margins, no crossover and no overshoot to tell. */
function whyNone(view: CraftView, name: AxisName): string | null {
  const loop = loopOf(view, name);
  if (loop === null) return beyondModel(view);
  const { stability, placed } = loop.value;
  switch (stability.verdict) {
    case 'swings':
      return `The loop of ${name} swings by itself at ${round(swingOf(stability))} Hz, ${placed.place}.`;
    case 'unanswered':
      return `The loop of ${name} has no answer, ${placed.place}: its gain runs out of all bounds.`;
    case 'calm':
      return stability.crossovers.length === 0 ? `The gain of the loop of ${name} never reaches 1.` : null;
  }
}

function round(value: number): string {
  return String(Number(value.toPrecision(3)));
}

/** What an axis hangs on beside its gains. */
const settings = [
  'gyro.filter.<number>.cutoff',
  'motor.response-time',
  'craft.motor-spacing',
  'motor.thrust-shape',
  'power.even-thrust',
];

/** What the answer to a stick hangs on as well. */
function stepSettings(name: AxisName): readonly string[] {
  const own = ['feedforward', 'limit'].map((setting) => `control.${name}.${setting}`);
  return ['derivative.input', 'derivative.limit', 'control.integral-limit', 'motor.rise-limit', ...own];
}

/** Behind the proportional gain an editor shows what is left, or that nothing is. */
const hintWords: ReadonlyMap<string, (figure: string) => string> = new Map([
  ['phase-margin', (figure) => `phase margin ${figure}`],
  ['swings', (figure) => `swings by itself at ${figure}`],
]);

export const loopFigures: readonly FigureSource[] = axisNames.flatMap((name) =>
  loopFigureList.map(({ id, title, compute, ...told }): FigureSource => {
    const words = hintWords.get(id);
    return {
      ...told,
      id: `${name}-${id}`,
      title: `${title}: ${name}`,
      ...(words === undefined ? {} : { hint: { at: [`control.${name}.proportional`], words } }),
      from: [...gainSettings(name), ...settings, ...(id === 'overshoot' ? stepSettings(name) : [])],
      compute: (view) => compute(view, name),
      whyNot: (view) => whyNone(view, name),
    };
  }),
);
