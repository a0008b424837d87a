import type { CraftView } from '../../craft/view';
import type { RecordingReport } from '../report';
import type { FoundInFlight } from './found';
import { likelyText, measuredText } from './measured-text';
import { hoverProposal, packProposal } from './use-measured';

/** A pack, and a hover, that are not what the script's parts let expect. */
export function besideParts(report: RecordingReport, view: CraftView): readonly FoundInFlight[] {
  return [...packFound(report, view), ...hoverFound(report, view)];
}

function packFound(report: RecordingReport, view: CraftView): readonly FoundInFlight[] {
  const { told } = report.pack;
  const measured = told?.resistanceAtTenSeconds.told ?? null;
  const expected = told?.expected;
  if (measured === null || expected === undefined) return [];
  const sagsMore = measured.low > expected.high;
  if (!sagsMore && measured.high >= expected.low) return [];
  return [
    {
      id: sagsMore ? 'pack/sags-more' : 'pack/holds-more',
      values: { measured: measuredText(measured), expected: measuredText(expected) },
      proposals: packProposal(report, view),
    },
  ];
}

function hoverFound(report: RecordingReport, view: CraftView): readonly FoundInFlight[] {
  const hover = report.hover.told;
  if (hover === null || hover.expected === undefined || hover.thrustScale === null) return [];
  const { throttle, expected, thrustScale } = hover;
  if (throttle.low <= expected.high && throttle.high >= expected.low) return [];
  return [
    {
      id: 'hover/off',
      values: {
        measured: measuredText(throttle),
        expected: measuredText(expected),
        scale: likelyText(thrustScale, 2),
      },
      proposals: hoverProposal(report, view),
    },
  ];
}
