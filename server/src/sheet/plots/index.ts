import type { Craft } from '../../craft/craft';
import { CraftView } from '../../craft/view';
import { carrierStrip } from './carrier-strip';
import { loopDelay, stickDelay } from './delay-stacks';
import { filterPlot } from './filter-plot';
import { overlayPicture } from './overlay-picture';
import type { Plot } from './plot';
import { stepPlot } from './step-plot';
import { stickCurves } from './stick-curves';
import { switchBars } from './switch-bars';
import { throttlePlots } from './throttle-plots';

/** What can be drawn of a craft with the pack in view. */
export function sheetPlots(craft: Craft, pack: string | null): readonly Plot[] {
  if (!craft.isWhole()) return [];
  const view = new CraftView(craft, pack);
  const plots = [
    switchBars(view),
    stickCurves(view),
    stickDelay(view),
    loopDelay(view),
    filterPlot(view),
    stepPlot(view),
    ...throttlePlots(view),
    carrierStrip(view),
    overlayPicture(view),
  ];
  return plots.flatMap((plot) => plot ?? []);
}
