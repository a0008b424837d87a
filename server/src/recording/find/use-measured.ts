import type { CraftView } from '../../craft/view';
import { axisNames } from '../../figures/axis-names';
import { shortNumber } from '../../units/number-text';
import { fromBase, unitOf } from '../../units/unit';
import { expectedOf } from '../estimate/beside-script';
import type { MeasuredSpan, RecordingProposal, RecordingReport } from '../report';
import { flownOn } from './flown';
import { likelyText, measuredText } from './measured-text';

/** What may be written into the script as it was measured: all that it does not say so already. */
export function useMeasured(report: RecordingReport, view: CraftView): readonly RecordingProposal[] {
  return [
    ...hoverProposal(report, view),
    ...packProposal(report, view),
    ...lagProposal(report, view),
    ...gainProposal(report, view),
  ];
}

/** Throttle and current of the hover, into the flight of the recording, or into one that is called as its file. */
export function hoverProposal(report: RecordingReport, view: CraftView): readonly RecordingProposal[] {
  const hover = report.hover.told;
  if (hover === null) return [];
  const { flight, when } = flownOn(view, report.name);
  const name = flight ?? flightCalled(report.name);
  const comment = (span: MeasuredSpan) =>
    `measured ${when}: ${measuredText(span)}, over ${basisOf(report.hover)}`;
  const sets = (
    [
      ['hover-throttle', hover.throttle],
      ['hover-current', hover.current],
    ] as const
  ).flatMap(([setting, span]) => {
    const path = `flight.${name}.${setting}`;
    return span === null || isSaid(view, path, span)
      ? []
      : [{ path, value: likelyText(span), comment: comment(span) }];
  });
  if (sets.length === 0) return [];
  const pack =
    flight === null && view.pack !== null
      ? [{ path: `flight.${name}.pack`, value: view.pack, comment: `recorded ${when}` }]
      : [];
  const what = sets.map(({ path, value }) => `${path.split('.').at(-1)} = ${value}`).join(', ');
  return [{ title: `Write ${what} into flight ${name}`, sets: [...pack, ...sets] }];
}

/** A section is called by letters, digits and hyphens. */
function flightCalled(file: string): string {
  const stem = file
    .replace(/\.[^.]*$/, '')
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, '-')
    .replace(/^-|-$/g, '');
  return stem === '' ? 'recorded' : stem;
}

/** The pack by itself as it is in the first second: what was measured, without leads and plugs. */
export function packProposal(report: RecordingReport, view: CraftView): readonly RecordingProposal[] {
  const measured = report.pack.told?.resistanceAtOneSecond;
  const parts = expectedOf(view);
  if (view.pack === null || measured == null || measured.told === null || parts === null) return [];
  const leads = 1000 * parts.likely.pack.leads;
  const { likely, low, high, unit } = measured.told;
  if (low <= leads) return [];
  const own = { likely: likely - leads, low: low - leads, high: high - leads, unit };
  const path = `pack.${view.pack}.resistance`;
  if (isSaid(view, path, own)) return [];
  const { when } = flownOn(view, report.name);
  const comment = `measured ${when}: ${measuredText(own)} without ${shortNumber(leads, 2)} mohm of leads and plugs`;
  return [
    {
      title: `Write resistance = ${likelyText(own)} into pack ${view.pack}`,
      sets: [{ path, value: likelyText(own), comment }],
    },
  ];
}

/** The mean of the motors’ time constants; where too few speeds tell, of the lags by which the craft turns. */
function lagProposal(report: RecordingReport, view: CraftView): readonly RecordingProposal[] {
  const bySpeed = (report.motors.told ?? []).flatMap(({ lag }) => lag.told ?? []);
  const byTurning = (report.responses.told ?? []).flatMap(({ lag }) => lag.told ?? []);
  const isBySpeed = bySpeed.length >= 3;
  const told = isBySpeed ? bySpeed : byTurning;
  if (told.length === 0) return [];
  const mean = (of: (span: MeasuredSpan) => number) =>
    told.reduce((sum, one) => sum + of(one), 0) / told.length;
  const span = {
    likely: mean((one) => one.likely),
    low: mean((one) => one.low),
    high: mean((one) => one.high),
    unit: 'ms',
  };
  const path = 'motor.response-time';
  if (isSaid(view, path, span)) return [];
  const { when } = flownOn(view, report.name);
  const from = isBySpeed ? `mean of ${told.length} motors` : 'from what they are told to how it turns';
  return [
    {
      title: `Write response-time = ${likelyText(span)} for the motors`,
      sets: [{ path, value: likelyText(span), comment: `measured ${when}: ${measuredText(span)}, ${from}` }],
    },
  ];
}

/**
 * Gains that no line sets. What a board's text holds is said otherwise: there the numbers are the board's own, and what 1
 * is of them is what a recording tells.
 */
function gainProposal({ gains, name }: RecordingReport, view: CraftView): readonly RecordingProposal[] {
  if (view.craft.boardText() !== undefined) return [];
  const { when } = flownOn(view, name);
  const sets = (gains.told ?? []).flatMap(({ axis, term, gain }) => {
    const path = `control.${axis}.${term}`;
    if (gain.told === null || view.isSet(path)) return [];
    const comment = `measured ${when}: ${measuredText(gain.told)}, over ${gain.basis}`;
    return [{ path, value: likelyText(gain.told), comment }];
  });
  if (sets.length === 0) return [];
  const axes = axisNames.filter((axis) => sets.some(({ path }) => path.startsWith(`control.${axis}.`)));
  return [{ title: `Write the gains of ${axes.join(', ')} as they were measured`, sets }];
}

/** Whether the script says a value within the span already. */
function isSaid(view: CraftView, path: string, { low, high, unit }: MeasuredSpan): boolean {
  const base = view.isSet(path) ? view.quantityOr(path, null) : null;
  if (base === null) return false;
  const value = fromBase(base, unitOf(unit));
  return value >= low && value <= high;
}

function basisOf(answer: RecordingReport['hover']): string {
  return answer.told === null ? '' : answer.basis;
}
