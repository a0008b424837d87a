import type { MeasuredGain, RecordingReported } from '../../server/src/lsp/recording-protocol';
import { gainRows } from '../../server/src/sheet/recording-rows';
import { question } from './answer';
import { measuredTable } from './measured-table';
import { likelyText } from './measured-text';

/** What do the board's numbers mean? */
export function gainsSection({ report, gains: written }: RecordingReported): HTMLElement {
  return question('gains', report.gains, shortOf, (all) =>
    measuredTable('Gains as they work, in the units of the script', gainRows(all, written)),
  );
}

function shortOf(all: readonly MeasuredGain[]): string {
  const known = all.flatMap(({ axis, term, gain }) =>
    term === 'proportional' && gain.told !== null ? [`${axis} ${likelyText(gain.told)}`] : [],
  );
  return known.length === 0 ? 'not known' : known.join(', ');
}
