import type { CraftView } from '../craft/view';
import { enduranceSpeed, highestSpeed, rangeSpeed, reachOutAndBack } from '../physics/best-speed';
import { speedForDrag } from '../physics/drag';
import { levelFlight } from '../physics/forward-flight';
import { type Forward, flyingAt, forwardOf, inFlight, powerAt } from './airframe';
import { beyondModel } from './beyond-model';
import { hovering } from './drive-states';
import type { Computed, FigureSource } from './figure';
import { type Discharge, flightEnd, flightWith } from './flight-time';
import { tellsPackKind } from './pack-source';
import { type Doubtful, type Estimate, estimate, estimateAbout } from './uncertain';
import { fine } from './why';

/** m/s: nothing that this is about flies as fast. */
const limit = 150;

/** Speeds of one model, looked for once: many figures ask for them. */
interface BestSpeeds {
  /** m/s */
  readonly top: number;
  readonly endurance: number;
  readonly range: number;
}

const found = new WeakMap<Forward, BestSpeeds | null>();

/** Null for a craft that can't hover. */
function bestSpeeds(forward: Forward): BestSpeeds | null {
  const known = found.get(forward);
  if (known !== undefined) return known;
  const speeds = flyingAt(forward, 0) === null ? null : speedsOf(forward);
  found.set(forward, speeds);
  return speeds;
}

function speedsOf(forward: Forward): BestSpeeds | null {
  const top = highestSpeed((speed) => flyingAt(forward, speed) !== null, limit);
  const power = (speed: number) => powerAt(forward, speed);
  const range = rangeSpeed(power, top);
  return range === null ? null : { top, endurance: enduranceSpeed(power, top), range: range.speed };
}

interface ForwardFigure extends Pick<FigureSource, 'id' | 'title' | 'unit'> {
  readonly from?: readonly string[];
  readonly hint?: NonNullable<FigureSource['hint']>;
  readonly concerns?: NonNullable<FigureSource['concerns']>;
  readonly whyNot?: NonNullable<FigureSource['whyNot']>;
  /** What it holds for, told beside it. */
  readonly place?: (view: CraftView) => string;
  /** Whether it may well be nothing, so that its span is no matter of factors. */
  readonly mayBeNothing?: boolean;
  readonly measure: (at: Forward, view: CraftView) => number | null;
  readonly why: (at: Forward, view: CraftView) => string;
}

const inputs = ['craft.drag-area', 'craft.mass', 'motor.kv', 'prop.diameter', 'prop.pitch'];
const ofPack = ['pack.<name>.cells', 'pack.<name>.capacity', 'power.charge-reserve', 'power.land-cell'];

const list: readonly ForwardFigure[] = [
  {
    id: 'endurance-speed',
    title: 'Airspeed at which it stays up longest',
    unit: 'm/s',
    mayBeNothing: true,
    measure: (at) => bestSpeeds(at)?.endurance ?? null,
    why(at) {
      const speed = bestSpeeds(at)?.endurance ?? 0;
      const least = `${fine(powerAt(at, speed), 'W')}, in the hover ${fine(powerAt(at, 0), 'W')}`;
      return `${fine(speed, 'm/s')}, where level flight takes the least from the pack: ${least}`;
    },
  },
  {
    id: 'range-speed',
    title: 'Airspeed at which it gets farthest in still air',
    unit: 'm/s',
    measure: (at) => bestSpeeds(at)?.range ?? null,
    why(at) {
      const speed = bestSpeeds(at)?.range ?? 0;
      return `${fine(speed, 'm/s')}, where a metre takes the least from the pack: ${fine(powerAt(at, speed) / speed, 'Wh/km')}`;
    },
  },
  {
    id: 'cruise-power',
    title: 'Power from the pack at that airspeed',
    unit: 'W',
    measure(at) {
      const speeds = bestSpeeds(at);
      return speeds === null ? null : powerAt(at, speeds.range);
    },
    why(at) {
      const speed = bestSpeeds(at)?.range ?? 0;
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
    measure(at, view) {
      const speeds = bestSpeeds(at);
      const far = speeds === null ? null : farthest(at, view, 0);
      return far === null ? null : far.distance / 1e3;
    },
    why(at, view) {
      const leg = farthest(at, view, 0);
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
    measure(at, view) {
      const ways = bothWays(at, view);
      return ways === null ? null : reachOutAndBack(ways.against.distance, ways.along.distance) / 1e3;
    },
    why(at, view) {
      const ways = bothWays(at, view);
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
    measure(at, view) {
      const ways = bothWays(at, view);
      if (ways === null) return null;
      const { against, along } = ways;
      const out = against.distance / (against.distance + along.distance);
      return (usedOn(along) * at.carried.charge * out) / 3.6;
    },
    why(at, view) {
      const ways = bothWays(at, view);
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
    measure: (at) => bestSpeeds(at)?.top ?? null,
    why(at) {
      const speed = bestSpeeds(at)?.top ?? 0;
      return `${fine(speed, 'm/s')}, ${leaningText(at, speed)}, all that motors and pack give while air comes through the propellers`;
    },
  },
  {
    id: 'tilt-speed',
    title: 'Top airspeed while self-levelling, by its tilt limit',
    unit: 'm/s',
    from: ['level.tilt-limit'],
    concerns: (view) => view.isSet('level.tilt-limit'),
    measure: tiltSpeed,
    why: (at, view) =>
      `${fine(tiltSpeed(at, view) ?? 0, 'm/s')}, ${leaningText(at, tiltSpeed(at, view) ?? 0)}`,
  },
];

function tiltSpeed(at: Forward, view: CraftView): number | null {
  const tilt = view.quantity('level.tilt-limit');
  const speeds = bestSpeeds(at);
  if (tilt === null || speeds === null) return null;
  const { weight, drive } = at.carried;
  if (tilt >= Math.PI / 2) return speeds.top;
  return Math.min(speeds.top, speedForDrag(at.drag, weight * Math.tan(tilt), drive.airDensity));
}

function leaningText(at: Forward, speed: number): string {
  const { tilt, drag, thrust } = levelFlight(inFlight(at).airframe, speed);
  return `leaning ${fine(tilt, 'deg')} with ${fine(drag, 'N')} of drag and ${fine(thrust, 'N')} of thrust`;
}

interface Leg {
  /** Through the air, m/s. */
  readonly speed: number;
  /** Of a whole pack. */
  readonly flight: Discharge;
  /** Over the ground, m. */
  readonly distance: number;
}

/** Share of the pack's charge. */
function usedOn({ flight: { from, to } }: Leg): number {
  return from - to;
}

/** By model and wind: two figures ask for the same. */
const inWind = new WeakMap<Forward, Map<number, number | null>>();

/** Airspeed (m/s) at which it gets farthest against a wind; null where it makes no way. */
function bestInWind(at: Forward, top: number, wind: number): number | null {
  const known = inWind.get(at) ?? new Map<number, number | null>();
  inWind.set(at, known);
  const before = known.get(wind);
  if (before !== undefined) return before;
  const speed = rangeSpeed((one) => powerAt(at, one), top, wind)?.speed ?? null;
  known.set(wind, speed);
  return speed;
}

/** As far as a full pack takes it until it is due to land, against a wind (m/s; below 0: with it); null where it makes no way. */
function farthest(at: Forward, view: CraftView, wind: number): Leg | null {
  const speeds = bestSpeeds(at);
  const end = flightEnd(view, at.carried, 'landing');
  if (speeds === null || end === null) return null;
  const speed = wind === 0 ? speeds.range : bestInWind(at, speeds.top, wind);
  if (speed === null) return null;
  const flight = flightWith(at.carried, { power: powerAt(at, speed), current: 0 }, end);
  return flight === null ? null : { speed, flight, distance: (speed - wind) * flight.seconds };
}

function bothWays(at: Forward, view: CraftView): { readonly against: Leg; readonly along: Leg } | null {
  const wind = view.quantity('craft.wind');
  if (wind === null) return null;
  const [against, along] = [farthest(at, view, wind), farthest(at, view, -wind)];
  return against === null || along === null ? null : { against, along };
}

/** Without a word of the wind a pilot would take it for the one that blows. */
function inWindWritten(view: CraftView): string {
  return view.isSet('craft.wind') ? `in ${view.shown('craft.wind')} of wind` : 'in no wind';
}

/** In a sentence; null where it can come back. */
function windTooStrong(view: CraftView): string | null {
  const forward = forwardOf(view);
  const wind = view.quantity('craft.wind');
  const speeds = forward === null ? null : bestSpeeds(forward.value.likely);
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
    measure,
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
      const of = mayBeNothing
        ? spanAbout(known.value, (at) => measure(at, view))
        : estimate(known.value, (at) => measure(at, view));
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
