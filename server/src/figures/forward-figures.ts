import type { CraftView } from '../craft/view';
import { reachOutAndBack } from '../physics/best-speed';
import { speedForDrag } from '../physics/drag';
import { levelFlight } from '../physics/forward-flight';
import { type Forward, flyingAt, forwardOf, inFlight, powerAt } from './airframe';
import { type BestSpeeds, bestSpeeds, hovers } from './best-speeds';
import { beyondModel } from './beyond-model';
import { hovering } from './drive-states';
import type { Computed, FigureSource } from './figure';
import { type BothWays, legIn, usedOn, waysIn } from './legs';
import { tellsPackKind } from './pack-source';
import { type Doubtful, type Estimate, estimate, estimateAbout } from './uncertain';
import { fine } from './why';

interface ForwardFigure extends Pick<FigureSource, 'id' | 'title' | 'unit'> {
  readonly from?: readonly string[];
  readonly hint?: NonNullable<FigureSource['hint']>;
  readonly concerns?: NonNullable<FigureSource['concerns']>;
  readonly whyNot?: NonNullable<FigureSource['whyNot']>;
  /** What it holds for, told beside it. */
  readonly place?: (view: CraftView) => string;
  /** Whether it may well be nothing, so that its span is no matter of factors. */
  readonly mayBeNothing?: boolean;
  /** Whether there is one wherever the craft hovers. */
  readonly isOfAll?: boolean;
  readonly measureIn: (view: CraftView, likely: Forward) => Measure;
  readonly why: (likely: Forward, view: CraftView) => string;
}

type Measure = (at: Forward) => number | null;

function bySpeeds(measure: (speeds: BestSpeeds, at: Forward) => number): ForwardFigure['measureIn'] {
  return (_, likely) => (at) => {
    const speeds = bestSpeeds(at, likely);
    return speeds === null ? null : measure(speeds, at);
  };
}

const inputs = ['craft.drag-area', 'craft.mass', 'motor.kv', 'prop.diameter', 'prop.pitch'];
const ofPack = ['pack.<name>.cells', 'pack.<name>.capacity', 'power.charge-reserve', 'power.land-cell'];

const list: readonly ForwardFigure[] = [
  {
    id: 'endurance-speed',
    title: 'Airspeed at which it stays up longest',
    unit: 'm/s',
    mayBeNothing: true,
    measureIn: bySpeeds(({ endurance }) => endurance),
    why(at) {
      const speed = bestSpeeds(at, at)?.endurance ?? 0;
      const least = `${fine(powerAt(at, speed), 'W')}, in the hover ${fine(powerAt(at, 0), 'W')}`;
      return `${fine(speed, 'm/s')}, where level flight takes the least from the pack: ${least}`;
    },
  },
  {
    id: 'range-speed',
    title: 'Airspeed at which it gets farthest in still air',
    unit: 'm/s',
    isOfAll: true,
    measureIn: bySpeeds(({ range }) => range),
    why(at) {
      const speed = bestSpeeds(at, at)?.range ?? 0;
      return `${fine(speed, 'm/s')}, where a metre takes the least from the pack: ${fine(powerAt(at, speed) / speed, 'Wh/km')}`;
    },
  },
  {
    id: 'cruise-power',
    title: 'Power from the pack at that airspeed',
    unit: 'W',
    isOfAll: true,
    measureIn: bySpeeds(({ range }, at) => powerAt(at, range)),
    why(at) {
      const speed = bestSpeeds(at, at)?.range ?? 0;
      const state = flyingAt(at, speed);
      return `${fine(state?.packVoltage ?? 0, 'V')} × ${fine(state?.packCurrent ?? 0, 'A')}, at ${fine(speed, 'm/s')}`;
    },
  },
  {
    id: 'range',
    title: 'Farthest flight in still air until landing',
    unit: 'km',
    from: ofPack,
    hint: { at: ['craft.drag-area'], words: (figure) => `flies ${figure} in still air` },
    measureIn(view, likely) {
      const legOf = legIn(view, likely);
      return (at) => {
        const leg = legOf(at, 0);
        return leg === null ? null : leg.distance / 1e3;
      };
    },
    why(at, view) {
      const leg = legIn(view, at)(at, 0);
      return leg === null ? '' : `${fine(leg.speed, 'm/s')} × ${fine(leg.flight.seconds, 'min')}`;
    },
  },
  {
    id: 'reach',
    title: 'How far out against the wind, and back',
    unit: 'km',
    from: ['craft.wind', ...ofPack],
    hint: { at: ['craft.wind'], words: (figure) => `${figure} out against it, and back` },
    place: inWindWritten,
    whyNot: (view) => windTooStrong(view) ?? beyondModel(view),
    measureIn: byWays(({ against, along }) => reachOutAndBack(against.distance, along.distance) / 1e3),
    why(at, view) {
      const ways = waysIn(view, at)(at);
      if (ways === null) return '';
      const { against, along } = ways;
      const formula = `1 / (1 / ${fine(against.distance, 'km')} + 1 / ${fine(along.distance, 'km')})`;
      return `${formula}, at ${fine(against.speed, 'm/s')} through the air against ${view.shown('craft.wind')} and at ${fine(along.speed, 'm/s')} with it`;
    },
  },
  {
    id: 'turn-back-charge',
    title: 'Used charge at which to turn back, with the wind behind it on the way out',
    unit: 'mAh',
    from: ['craft.wind', ...ofPack],
    place: inWindWritten,
    whyNot: (view) => windTooStrong(view) ?? beyondModel(view),
    measureIn: byWays(({ against, along }, at) => {
      const out = against.distance / (against.distance + along.distance);
      return (usedOn(along) * at.carried.charge * out) / 3.6;
    }),
    why(at, view) {
      const ways = waysIn(view, at)(at);
      if (ways === null) return '';
      const share = fine(usedOn(ways.along), '%');
      const [against, along] = [ways.against, ways.along].map(({ distance }) => fine(distance, 'km'));
      return `${share} × ${fine(at.carried.charge, 'mAh')} × ${against} / (${against} + ${along}), as far as it gets against ${view.shown('craft.wind')} and with it`;
    },
  },
  {
    id: 'top-speed',
    title: 'Top airspeed in level flight, pack half used',
    unit: 'm/s',
    isOfAll: true,
    measureIn: bySpeeds(({ top }) => top),
    why(at) {
      const speed = bestSpeeds(at, at)?.top ?? 0;
      return `${fine(speed, 'm/s')}, ${leaningText(at, speed)}, all that motors and pack give while air comes through the propellers`;
    },
  },
  {
    id: 'tilt-speed',
    title: 'Top airspeed while self-levelling, by its tilt limit',
    unit: 'm/s',
    from: ['level.tilt-limit'],
    concerns: (view) => view.isSet('level.tilt-limit'),
    measureIn: tiltSpeedIn,
    why(at, view) {
      const speed = tiltSpeedIn(view, at)(at) ?? 0;
      return `${fine(speed, 'm/s')}, ${leaningText(at, speed)}`;
    },
  },
];

function tiltSpeedIn(view: CraftView, likely: Forward): Measure {
  const tilt = view.quantity('level.tilt-limit');
  return (at) => {
    const speeds = bestSpeeds(at, likely);
    if (tilt === null || speeds === null) return null;
    const { weight, drive } = at.carried;
    if (tilt >= Math.PI / 2) return speeds.top;
    return Math.min(speeds.top, speedForDrag(at.drag, weight * Math.tan(tilt), drive.airDensity));
  };
}

function leaningText(at: Forward, speed: number): string {
  const { tilt, drag, thrust } = levelFlight(inFlight(at).airframe, speed);
  return `leaning ${fine(tilt, 'deg')} with ${fine(drag, 'N')} of drag and ${fine(thrust, 'N')} of thrust`;
}

function byWays(measure: (ways: BothWays, at: Forward) => number): ForwardFigure['measureIn'] {
  return (view, likely) => {
    const waysOf = waysIn(view, likely);
    return (at) => {
      const ways = waysOf(at);
      return ways === null ? null : measure(ways, at);
    };
  };
}

function inWindWritten(view: CraftView): string {
  return view.isSet('craft.wind') ? `in ${view.shown('craft.wind')} of wind` : 'in no wind';
}

/** In a sentence; null where it can come back. */
function windTooStrong(view: CraftView): string | null {
  const forward = forwardOf(view);
  const wind = view.quantity('craft.wind');
  const likely = forward?.value.likely;
  const speeds = likely === undefined ? null : bestSpeeds(likely, likely);
  if (speeds === null || wind === null || speeds.top > wind) return null;
  return `A wind of ${view.shown('craft.wind')} is faster than the craft likely flies, ${view.short(speeds.top, 'm/s')}: it can’t come back against it.`;
}

/** Of a measure that may be nothing; a craft that can't hover at an end of a doubt tells nothing of it. */
function spanAbout(
  { likely, turned }: Doubtful<Forward>,
  measure: (at: Forward) => number | null,
): Pick<Estimate, 'likely' | 'low' | 'high'> | null {
  const value = measure(likely);
  return value === null ? null : estimateAbout(value, turned, (at) => measure(at) ?? value);
}

export const forwardFigures: readonly FigureSource[] = list.map(
  ({
    id,
    title,
    unit,
    from = [],
    hint,
    concerns,
    place,
    whyNot = beyondModel,
    mayBeNothing = false,
    isOfAll = false,
    measureIn,
    why,
  }) => ({
    id,
    title,
    unit,
    from: [...new Set([...from, ...inputs])],
    ...(hint === undefined ? {} : { hint }),
    ...(concerns === undefined ? {} : { concerns }),
    ...(place === undefined ? {} : { tellsPlace: true }),
    whyNot,
    compute(view): Computed | null {
      const known = forwardOf(view);
      if (known === null) return null;
      const { likely } = known.value;
      if (hovering(likely.carried) === null) return null;
      const measure = measureIn(view, likely);
      const of = mayBeNothing
        ? spanAbout(known.value, measure)
        : estimate(known.value, measure, isOfAll ? hovers : undefined);
      if (of === null) return null;
      const told = place === undefined ? {} : { place: place(view) };
      return {
        ...told,
        ...of,
        why: why(likely, view),
        settledBy: tellsPackKind(view),
        assumed: known.assumed,
      };
    },
  }),
);
