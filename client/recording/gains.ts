import type { MeasuredGain, RecordingTold } from '../../server/src/lsp/recording-protocol';
import { gainRows } from '../../server/src/sheet/recording-rows';
import { question } from './answer';
import { likelyText } from './measured-text';
import { toldTable } from './told-table';

/** What do the board's numbers mean? */
export function gainsSection({ report, gains: written }: RecordingTold): HTMLElement {
  return question('gains', report.gains, shortOf, (all) =>
    toldTable('Gains as they work, in the units of the script', gainRows(all, written)),
  );
}

function shortOf(all: readonly MeasuredGain[]): string {
  const known = all.flatMap(({ axis, term, gain }) =>
    term === 'proportional' && gain.told !== null ? [`${axis} ${likelyText(gain.told)}`] : [],
  );
  return known.length === 0 ? 'not known' : known.join(', ');
}
