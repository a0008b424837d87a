import type { Craft } from '../../craft/craft';
import { relativeInclude } from '../../craft/include-path';
import { CraftView } from '../../craft/view';
import { axisNames } from '../../figures/axis-names';
import { packFlown } from '../../figures/flights';
import { pathText, stepsOf } from '../../language/path-text';
import { quoted } from '../../language/quoted-text';
import type { MeasuredGain, RecordingProposal, RecordingReport } from '../../recording/report';
import { gyroFilterPlot } from '../../sheet/plots/filter-plot';
import type { LinePlot } from '../../sheet/plots/plot';
import type { WrittenGain } from '../../sheet/recording-rows';
import { type Target, targetOfPath } from '../../sheet/target';
import { recordedFlights } from './recorded';

/** The craft as it was flown on a recording: with the pack of the flight that names the file, else the one in view. */
export function viewFlown(craft: Craft, recording: string, packInView: string | null): CraftView {
  const flight = recordedFlights(craft).find(({ uri }) => uri === recording)?.flight;
  const pack = flight === undefined ? null : packFlown(new CraftView(craft, null), flight);
  return new CraftView(craft, pack ?? packInView);
}

/** Where no flight of the script names a recording and there are several packs: with which it is held against. */
export function packTaken({ craft, pack }: CraftView, recording: string): readonly string[] {
  const isNamed = recordedFlights(craft).some(({ uri }) => uri === recording);
  if (isNamed || pack === null || craft.packs().length < 2) return [];
  return [`No flight of the script names this recording: it is taken for one with the pack ${pack}.`];
}

/**
 * The same with the recording's name in what is proposed for its flight, where no flight of the script names it yet: the
 * next time the two belong together.
 */
export function namingRecording(report: RecordingReport, { craft }: CraftView, uri: string): RecordingReport {
  const path = relativeInclude(craft.root.uri, uri);
  if (path === null || recordedFlights(craft).some((one) => one.uri === uri)) return report;
  const named = (proposal: RecordingProposal): RecordingProposal => {
    const [group, flight] = stepsOf(proposal.sets[0]?.path ?? '');
    if (group !== 'flight' || flight === undefined) return proposal;
    const naming = { path: pathText([group, flight, 'recording']), value: quoted(path), comment: '' };
    return { ...proposal, sets: [naming, ...proposal.sets] };
  };
  return {
    ...report,
    proposals: report.proposals.map(named),
    findings: report.findings.map((finding) => ({ ...finding, proposals: finding.proposals.map(named) })),
  };
}

/** What the script has to say to what a recording tells. */
export interface BesideScript {
  /** What the script's filters leave, with its tones; null where they are not known. */
  readonly filters: LinePlot | null;
  /** The lines of the settings that proposals are about, by path; none for what the script does not set. */
  readonly lines: readonly { readonly path: string; readonly target: Target }[];
  /** The gains that the script sets, to stand beside those that were measured. */
  readonly gains: readonly WrittenGain[];
}

const gainTerms: readonly MeasuredGain['term'][] = ['proportional', 'integral', 'derivative'];

export function besideScript(view: CraftView, { findings, proposals }: RecordingReport): BesideScript {
  const all = [...findings.flatMap((finding) => finding.proposals), ...proposals];
  const paths = new Set(all.flatMap(({ sets }) => sets.map(({ path }) => path)));
  return {
    filters: gyroFilterPlot(view),
    lines: [...paths].flatMap((path) => {
      const target = targetOfPath(view, path);
      return target === null ? [] : [{ path, target }];
    }),
    gains: writtenGains(view),
  };
}

/** The gains that a script sets, in its own words. */
export function writtenGains(view: CraftView): readonly WrittenGain[] {
  return axisNames.flatMap((axis) =>
    gainTerms.flatMap((term) => {
      const path = `control.${axis}.${term}`;
      return view.isSet(path) && view.value(path) !== null ? [{ axis, term, text: view.shown(path) }] : [];
    }),
  );
}
