import { element, scroller } from '../../page/element';
import { fold } from '../fold';

type TableCell = string | HTMLElement;

/** The same as a drawing, for those who can't see it: folded away below. */
export function asTable(
  id: string,
  title: string,
  head: readonly string[],
  rows: readonly (readonly TableCell[])[],
): HTMLElement {
  const table = element(
    'table',
    {},
    element('caption', { class: 'said' }, title),
    element('thead', {}, element('tr', {}, ...head.map((name) => element('th', { scope: 'col' }, name)))),
    element('tbody', {}, ...rows.map(row)),
  );
  return fold(
    { id: `${id}-table`, name: 'more', isOpenAtFirst: false },
    [element('span', {}, 'As a table'), element('span', { class: 'said' }, `: ${title}`)],
    [scroller(title, table)],
  );
}

function row([first = '', ...others]: readonly TableCell[]): HTMLElement {
  return element(
    'tr',
    {},
    element('th', { scope: 'row' }, first),
    ...others.map((cell) => element('td', {}, cell)),
  );
}
