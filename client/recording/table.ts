import { element, scroller } from '../page/element';

export type Cell = string | Node;

/** Rows under headings, the first cell of each its name; told to a screen reader by its title. */
export function table(
  title: string,
  head: readonly string[],
  rows: readonly (readonly Cell[])[],
): HTMLElement {
  const body = rows.map(([first = '', ...others]) =>
    element(
      'tr',
      {},
      element('th', { scope: 'row' }, first),
      ...others.map((cell) => element('td', {}, cell)),
    ),
  );
  return scroller(
    title,
    element(
      'table',
      {},
      element('caption', { class: 'said' }, title),
      element('thead', {}, element('tr', {}, ...head.map((name) => element('th', { scope: 'col' }, name)))),
      element('tbody', {}, ...body),
    ),
  );
}

/** What a drawing shows, as a table that is folded away below it. */
export function asTable(
  title: string,
  head: readonly string[],
  rows: readonly (readonly Cell[])[],
): HTMLElement {
  return element(
    'details',
    { class: 'told' },
    element('summary', {}, 'As a table', element('span', { class: 'said' }, `: ${title}`)),
    table(title, head, rows),
  );
}
