import type { Craft } from '../../craft/craft';
import { CraftView } from '../../craft/view';
import { packFlown } from '../../figures/flights';
import type { RecordingReport } from '../../recording/report';
import { gyroFilterPlot } from '../../sheet/plots/filter-plot';
import type { LinePlot } from '../../sheet/plots/plot';
import { type Target, targetOfPath } from '../../sheet/target';
import { recordedFlights } from './recorded';

/** The craft as it was flown on a recording: with the pack of the flight that names the file, else the one in view. */
export function viewFlown(craft: Craft, recording: string, packInView: string | null): CraftView {
  const flight = recordedFlights(craft).find(({ uri }) => uri === recording)?.flight;
  const pack = flight === undefined ? null : packFlown(new CraftView(craft, null), flight);
  return new CraftView(craft, pack ?? packInView);
}

/** What the script has to say to what a recording tells. */
export interface BesideScript {
  /** What the script's filters leave, with its tones; null where they are not known. */
  readonly filters: LinePlot | null;
  /** The lines of the settings that proposals are about, by path; none for what the script does not set. */
  readonly lines: readonly { readonly path: string; readonly target: Target }[];
}

export function besideScript(view: CraftView, { findings, proposals }: RecordingReport): BesideScript {
  const all = [...findings.flatMap((finding) => finding.proposals), ...proposals];
  const paths = new Set(all.flatMap(({ sets }) => sets.map(({ path }) => path)));
  return {
    filters: gyroFilterPlot(view),
    lines: [...paths].flatMap((path) => {
      const target = targetOfPath(view, path);
      return target === null ? [] : [{ path, target }];
    }),
  };
}
