import { CraftView } from '../craft/view';
import type { Figure, FigureSource } from './figure';
import { leadFigures } from './leads';
import { massFigures } from './mass';
import { measuringFigures } from './measuring';
import { motorSignalFigures } from './motor-signal';
import { packFigures } from './pack';
import { receiverFigures } from './receiver';
import { recordFigures } from './record';
import { supplyFigures } from './supply';
import { videoFigures } from './video';

/** Every figure that can be computed, in the order of the build sheet. */
export const figureSources: readonly FigureSource[] = [
  ...packFigures,
  ...massFigures,
  ...motorSignalFigures,
  ...measuringFigures,
  ...supplyFigures,
  ...leadFigures,
  ...receiverFigures,
  ...videoFigures,
  ...recordFigures,
];

const byId = new Map(figureSources.map((source) => [source.id, source]));

/** The unit of a figure; undefined when there is no such figure. */
export function figureUnit(id: string): string | undefined {
  return byId.get(id)?.unit;
}

/** One figure of a craft with the view's pack; null where it can't be computed. Kept until an input changes. */
export function figureOf(view: CraftView, id: string): Figure | null {
  const source = byId.get(id);
  if (source === undefined) return null;
  return view.craft.cells.get(`figure ${id} @ ${view.pack ?? ''}`, () => compute(source, view));
}

function compute(source: FigureSource, { craft, pack }: CraftView): Figure | null {
  const view = new CraftView(craft, pack); // its own, so that what it assumes is this figure's alone
  const computed = source.compute(view);
  if (computed === null || !Number.isFinite(computed.likely)) return null;
  const { likely, low = likely, high = likely, why, assumed = [] } = computed;
  const defaults = view.assumed.map((path) => `${path} ${view.shown(path)}`);
  return {
    id: source.id,
    title: source.title,
    unit: source.unit,
    low,
    likely,
    high,
    why,
    assumed: [...defaults, ...assumed],
  };
}
