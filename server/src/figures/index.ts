import { type CraftView, viewQuery } from '../craft/view';
import { airFigures } from './air';
import { delayFigures } from './delays';
import { driveFigures } from './drive-figures';
import type { Figure, FigureSource } from './figure';
import { filterFigures } from './filter-figures';
import { leadFigures } from './leads';
import { limitFigures } from './limit-figures';
import { loopFigures } from './loop-figures';
import { massFigures } from './mass';
import { measuringFigures } from './measuring';
import { motorLagFigures } from './motor-lag';
import { motorSignalFigures } from './motor-signal';
import { packFigures } from './pack';
import { receiverFigures } from './receiver';
import { recordFigures } from './record';
import { stickFigures } from './stick-figures';
import { supplyFigures } from './supply';
import { videoFigures } from './video';

/** Every figure that can be computed, in the order of the build sheet. */
export const figureSources: readonly FigureSource[] = [
  ...packFigures,
  ...massFigures,
  ...airFigures,
  ...driveFigures,
  ...limitFigures,
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

export function figureSource(id: string): FigureSource | undefined {
  return byId.get(id);
}

/** The unit of a figure; undefined when there is no such figure. */
export function figureUnit(id: string): string | undefined {
  return byId.get(id)?.unit;
}

/** One figure of a craft with the view's pack; null where it can't be computed. Kept until an input changes. */
export function figureOf(view: CraftView, id: string): Figure | null {
  const source = byId.get(id);
  return source !== undefined && hasMember(view, source) ? figureNamed(view, id) : null;
}

/** Asked before anything is kept: most members that a collection may have are not there. */
function hasMember(view: CraftView, { member }: FigureSource): boolean {
  return member === undefined || view.members(member.collection).includes(member.name);
}

const figureNamed = viewQuery('figure', (view, id: string): Figure | null => {
  const source = byId.get(id);
  return source === undefined ? null : compute(source, view);
});

function compute(source: FigureSource, view: CraftView): Figure | null {
  const computed = source.compute(view);
  // Nothing is concluded from a line that can't be read: it has its own finding.
  if (computed === null || view.unreadable.length > 0) return null;
  const { likely, why, assumed = [], lowWords, highWords, place } = computed;
  const floor = source.isSigned === true ? Number.NEGATIVE_INFINITY : 0;
  const low = Math.max(floor, computed.low ?? likely);
  const high = computed.high ?? likely;
  // Outside a formula's domain there is no figure, rather than one without an end.
  if (![low, likely, high].every(Number.isFinite) || likely < floor) return null;
  return {
    id: source.id,
    title: source.title,
    unit: source.unit,
    low,
    likely,
    high,
    ...(lowWords === undefined ? {} : { lowWords }),
    ...(highWords === undefined ? {} : { highWords }),
    ...(place === undefined ? {} : { place }),
    why,
    assumed: [...view.assumedInWords, ...assumed],
  };
}
