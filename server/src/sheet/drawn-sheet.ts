import type { HandOver } from '../catalog/model/hand-over';
import type { Finding } from '../checks/report/finding';
import { asScript } from '../checks/report/render';
import type { Craft } from '../craft/craft';
import { type BuildSheet, buildSheet } from './build-sheet';
import { sheetPlots } from './plots';
import type { Plot } from './plots/plot';

/** The build sheet with its drawings, for a panel. */
export interface DrawnSheet extends BuildSheet {
  readonly plots: readonly Plot[];
}

export function drawnSheet(
  craft: Craft,
  findings: readonly Finding[],
  pack: string | null,
  handed: HandOver | null = null,
  renderer = asScript,
): DrawnSheet {
  return { ...buildSheet(craft, findings, pack, handed, renderer), plots: sheetPlots(craft, pack) };
}
