import type { MeasuredGain, RecordingTold } from '../../server/src/lsp/recording-protocol';
import { question } from './answer';
import { likelyText } from './measured-text';
import { toldTable } from './told-table';

const terms: readonly (readonly [term: MeasuredGain['term'], title: string])[] = [
  ['proportional', 'Proportional'],
  ['integral', 'Integral'],
  ['derivative', 'Derivative'],
];

/** What do the board's numbers mean? */
export function gainsSection({ report, gains: written }: RecordingTold): HTMLElement {
  return question('gains', report.gains, shortOf, (all) => {
    const axes = [...new Set(all.map(({ axis }) => axis))];
    const find = (axis: MeasuredGain['axis'], term: MeasuredGain['term']) =>
      all.find((one) => one.axis === axis && one.term === term)?.gain ?? null;
    const writtenText = (axis: MeasuredGain['axis'], term: MeasuredGain['term']) => {
      const text = written.find((one) => one.axis === axis && one.term === term)?.text;
      return text === undefined ? null : `script: ${text}`;
    };
    return toldTable(
      'Gains in the units of the script',
      axes,
      terms.map(([term, name]) => ({
        name,
        cells: axes.map((axis) => ({ value: find(axis, term), beside: writtenText(axis, term) })),
      })),
    );
  });
}

function shortOf(all: readonly MeasuredGain[]): string {
  const known = all.flatMap(({ axis, term, gain }) =>
    term === 'proportional' && gain.told !== null ? [`${axis} ${likelyText(gain.told)}`] : [],
  );
  return known.length === 0 ? 'not known' : known.join(', ');
}
