import type { Craft } from '../../craft/craft';
import { CraftView, viewQuery } from '../../craft/view';
import { carrierStrip } from './carrier-strip';
import { loopDelay, stickDelay } from './delay-stacks';
import { filterPlot } from './filter-plot';
import { flightPlot } from './flight-plot';
import { overlayPicture } from './overlay-picture';
import type { Plot } from './plot';
import { stepPlot } from './step-plot';
import { stickCurves } from './stick-curves';
import { switchBars } from './switch-bars';
import { throttlePlots } from './throttle-plots';
import { voltagePlots } from './voltage-plots';

/** What can be drawn of a craft with the pack in view. */
export function sheetPlots(craft: Craft, pack: string | null): readonly Plot[] {
  if (!craft.isWhole()) return [];
  const view = new CraftView(craft, pack);
  const plots = [switchBars(view), ...kept.flatMap((draw) => draw(view)), overlayPicture(view)];
  return plots.flatMap((plot) => plot ?? []);
}

type PlotsDrawn = Plot | null | readonly Plot[];

/** Drawings that lead to no line stay as they are until a setting that they show changes. */
const kept: readonly ((view: CraftView) => PlotsDrawn)[] = [
  viewQuery('stick curves', (view): PlotsDrawn => stickCurves(view)),
  viewQuery('stick delay', (view): PlotsDrawn => stickDelay(view)),
  viewQuery('loop delay', (view): PlotsDrawn => loopDelay(view)),
  viewQuery('filter plot', (view): PlotsDrawn => filterPlot(view)),
  viewQuery('step plot', (view): PlotsDrawn => stepPlot(view)),
  viewQuery('throttle plots', (view): PlotsDrawn => throttlePlots(view)),
  viewQuery('flight plot', (view): PlotsDrawn => flightPlot(view)),
  viewQuery('voltage plots', (view): PlotsDrawn => voltagePlots(view)),
  viewQuery('carrier strip', (view): PlotsDrawn => carrierStrip(view)),
];
