import type { Plot } from '../../../server/src/sheet/plots/plot';
import { carrierStrip } from './carriers';
import { linePlot } from './lines';
import { overlayPicture } from './overlay';
import { delayStack } from './stack';
import { switchBars } from './switches';

/** Draws a plot, with its title and its table. */
export function drawPlot(plot: Plot): HTMLElement {
  switch (plot.kind) {
    case 'lines':
      return linePlot(plot);
    case 'stack':
      return delayStack(plot);
    case 'switches':
      return switchBars(plot);
    case 'overlay':
      return overlayPicture(plot);
    case 'carriers':
      return carrierStrip(plot);
  }
}
