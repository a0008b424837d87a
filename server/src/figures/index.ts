import { type CraftView, viewQuery } from '../craft/view';
import { airFigures } from './air';
import { delayFigures } from './delays';
import { driveFigures } from './drive-figures';
import type { Figure, FigureSource } from './figure';
import { filterFigures } from './filter-figures';
import { flyingFigures } from './flying-figures';
import { forwardFigures } from './forward-figures';
import { fullThrottleFigures } from './full-throttle-figures';
import { leadFigures } from './leads';
import { limitFigures } from './limit-figures';
import { loopFigures } from './loop-figures';
import { lossFigures } from './loss-figures';
import { massFigures } from './mass';
import { measuringFigures } from './measuring';
import { minutesFigures } from './minutes-figures';
import { askedOrLacking } from './model';
import { motorLagFigures } from './motor-lag';
import { motorSignalFigures } from './motor-signal';
import { packFigures } from './pack';
import { receiverFigures } from './receiver';
import { recordFigures } from './record';
import { stickFigures } from './stick-figures';
import { supplyFigures } from './supply';
import { videoFigures } from './video';
import { voltageFigures } from './voltage-figures';
import { warmthFigures } from './warmth-figures';

/** Every figure that can be computed, in the order of the build sheet. */
export const figureSources: readonly FigureSource[] = [
  ...packFigures,
  ...massFigures,
  ...airFigures,
  ...driveFigures,
  ...minutesFigures,
  ...voltageFigures,
  ...flyingFigures,
  ...forwardFigures,
  ...limitFigures,
  ...fullThrottleFigures,
  ...lossFigures,
  ...warmthFigures,
  ...motorSignalFigures,
  ...motorLagFigures,
  ...measuringFigures,
  ...supplyFigures,
  ...leadFigures,
  ...receiverFigures,
  ...videoFigures,
  ...filterFigures,
  ...delayFigures,
  ...stickFigures,
  ...loopFigures,
  ...recordFigures,
];

const byId = new Map(figureSources.map((source) => [source.id, source]));

/** Collections of which some figures tell member by member. */
const memberCollections = [...new Set(figureSources.flatMap(({ member }) => member?.collection ?? []))];

export function figureSource(id: string): FigureSource | undefined {
  return byId.get(id);
}

/** The unit of a figure; undefined when there is no such figure. */
export function figureUnit(id: string): string | undefined {
  return byId.get(id)?.unit;
}

/** All figures that can be computed of a craft with the view's pack, by their ids, in the order of the build sheet. */
export function figuresOf(view: CraftView): ReadonlyMap<string, Figure> {
  const found = new Map<string, Figure>();
  for (const { id } of sourcesOf(view)) {
    const figure = figureNamed(view, id);
    if (figure !== null) found.set(id, figure);
  }
  return found;
}

/** The figures that tell of something that a craft has, in the order of the build sheet. */
export const sourcesOf = viewQuery('figures of what there is', (view): readonly FigureSource[] => {
  const members = new Map(memberCollections.map((each) => [each, new Set(view.members(each))]));
  return figureSources.filter(
    ({ member }) => member === undefined || members.get(member.collection)?.has(member.name) === true,
  );
});

/** One figure of a craft with the view's pack; null where it can't be computed. Kept until an input changes. */
export function figureOf(view: CraftView, id: string): Figure | null {
  const source = byId.get(id);
  return source !== undefined && hasMember(view, source) ? figureNamed(view, id) : null;
}

/** Asked before anything is kept: most members that a collection may have are not there. */
function hasMember(view: CraftView, { member }: FigureSource): boolean {
  return member === undefined || view.members(member.collection).includes(member.name);
}

const figureNamed = askedOrLacking('figure', (view, id: string): Figure | null => {
  const source = byId.get(id);
  return source === undefined ? null : compute(source, view);
});

function compute(source: FigureSource, view: CraftView): Figure | null {
  const computed = source.compute(view);
  // Nothing is concluded from a line that can't be read: it has its own finding.
  if (computed === null || view.unreadable.length > 0) return null;
  const { likely, why, assumed = [] } = computed;
  const floor = source.isSigned === true ? Number.NEGATIVE_INFINITY : 0;
  const low = Math.max(floor, computed.low ?? likely);
  const high = computed.high ?? likely;
  // Outside a formula's domain there is no figure, rather than one without an end.
  if (!Number.isFinite(low + likely + high) || likely < floor) return null;
  // Written down one by one: every edit makes tens of figures, and spreading takes several times as long.
  const figure: Writable<Figure> = {
    id: source.id,
    title: source.title,
    unit: source.unit,
    low,
    likely,
    high,
    why,
    // A figure that rests on others assumes the same again.
    assumed: distinct(view.assumedInWords, assumed),
  };
  const { lowWords, highWords, place, measured = [], settledBy = [] } = computed;
  if (lowWords !== undefined) figure.lowWords = lowWords;
  if (highWords !== undefined) figure.highWords = highWords;
  if (place !== undefined) figure.place = place;
  if (measured.length > 0) figure.measured = measured;
  if (settledBy.length > 0) figure.settledBy = settledBy;
  return figure;
}

type Writable<T> = { -readonly [K in keyof T]: T[K] };

/** The list itself where nothing stands in it twice: figures that rest on one model share it. */
function distinct(some: readonly string[], others: readonly string[]): readonly string[] {
  const all = some.length === 0 ? others : others.length === 0 ? some : [...some, ...others];
  const once = new Set(all);
  return once.size === all.length ? all : [...once];
}
