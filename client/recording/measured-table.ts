import { basesOf, reasonsOf } from '../../server/src/sheet/recording-reasons';
import type { AxisCell, AxisRow } from '../../server/src/sheet/recording-rows';
import { element } from '../page/element';
import { withheld } from './answer';
import { measuredWords } from './measured';
import { table } from './table';

/**
 * Quantities by axes. What is withheld says so in its place, and below why and what to do, each reason once; what the
 * others rest on is folded away.
 */
export function measuredTable(title: string, rows: readonly AxisRow[]): readonly HTMLElement[] {
  const axes = rows[0]?.cells.map(({ axis }) => axis) ?? [];
  return [
    table(
      title,
      ['', ...axes],
      rows.map(({ name, cells }) => [name, ...cells.map(cellOf)]),
    ),
    ...reasonsOf(rows).map(({ about, said }) => {
      const text = withheld(said.reason, said.advice);
      text.prepend(element('b', {}, `${about}: `));
      return text;
    }),
    ...bases(title, rows),
  ];
}

function cellOf({ value, beside }: AxisCell): HTMLElement {
  // What is no number is drawn.
  if (value === null) return element('span', { class: 'aside' }, 'drawn above');
  return element(
    'span',
    {},
    value.told === null ? 'not known' : measuredWords(value.told),
    beside === null ? null : element('span', { class: 'aside beside' }, beside),
  );
}

function bases(title: string, rows: readonly AxisRow[]): readonly HTMLElement[] {
  const all = basesOf(rows);
  if (all.length === 0) return [];
  return [
    element(
      'details',
      { class: 'told' },
      element('summary', {}, 'What this rests on', element('span', { class: 'said' }, `: ${title}`)),
      element(
        'ul',
        { class: 'sentences' },
        ...all.map(({ about, said }) => element('li', {}, `${about}: ${said}`)),
      ),
    ),
  ];
}
