import type { AxisResponse, RecordingReported } from '../../server/src/lsp/recording-protocol';
import { lateRows } from '../../server/src/sheet/recording-rows';
import { element } from '../page/element';
import { question } from './answer';
import { measuredTable } from './measured-table';
import { likelyText } from './measured-text';

/** Is it late? And how much may it be later before it swings? */
export function lateSection({ report, models }: RecordingReported): HTMLElement {
  return question('late', report.responses, shortOf, (axes) => [
    ...measuredTable('How late it is, and what is left before it swings', lateRows(axes, models)),
    ...waysOf(axes),
  ]);
}

/** By which way margins were found, for those that were. */
function waysOf(axes: readonly AxisResponse[]): readonly HTMLElement[] {
  const ways = new Set(axes.flatMap(({ margins }) => margins.told?.by ?? []));
  const said = [
    ...(ways.has('controller')
      ? ['Margins are those of the craft as it was measured, with the controller that the script describes.']
      : []),
    ...(ways.has('answer')
      ? ['Where the controller is not known, margins follow from the answer alone.']
      : []),
  ];
  return said.length === 0
    ? []
    : [element('p', { class: 'aside' }, [...said, 'A test hover decides.'].join(' '))];
}

function shortOf(axes: readonly AxisResponse[]): string {
  const margins = axes.flatMap(({ axis, margins: { told } }) =>
    told === null ? [] : [{ axis, margin: told.phaseMargin }],
  );
  const [least] = [...margins].sort((one, other) => one.margin.likely - other.margin.likely);
  const delays = axes.flatMap(({ delay }) => delay.told ?? []);
  const [longest] = [...delays].sort((one, other) => other.likely - one.likely);
  const said = [
    ...(longest === undefined ? [] : [`by ${likelyText(longest)}`]),
    ...(least === undefined ? [] : [`phase margin ${likelyText(least.margin)} about ${least.axis}`]),
  ];
  return said.length === 0 ? 'not known' : said.join(', ');
}
