import type { PackCell, PackRow, SharedRow, WhichPack } from '../../../server/src/sheet/which-pack';
import { element } from '../element';
import { fold } from '../fold';
import { valueLink } from '../link';

export function whichPack({ columns, rows, shared, caution }: WhichPack): readonly HTMLElement[] {
  if (columns.length === 0) {
    const how = 'Name a pack to see what it does: [pack.sprint] with chemistry, cells and capacity.';
    return [element('p', { class: 'aside' }, how)];
  }
  return [
    packTable(columns, rows),
    ...(shared.length === 0 ? [] : [sharedTable(shared)]),
    element('p', { class: 'aside' }, caution),
  ];
}

function packTable(columns: readonly string[], rows: readonly PackRow[]): HTMLElement {
  const head = element(
    'tr',
    {},
    element('td', {}),
    ...columns.map((name) => element('th', { scope: 'col' }, name)),
  );
  const table = element(
    'table',
    {},
    element('thead', {}, head),
    element('tbody', {}, ...rows.map(({ title, cells }) => row(title, cells))),
  );
  return scroller('Packs side by side', table);
}

function sharedTable(shared: readonly SharedRow[]): HTMLElement {
  const body = element('tbody', {}, ...shared.map(({ title, cell }) => row(title, [cell])));
  return fold(
    { id: 'shared-figures', name: 'more', isOpenAtFirst: false },
    [element('span', {}, 'The same with every pack')],
    [scroller('Figures that no pack changes', element('table', {}, body))],
  );
}

/** Wide tables scroll in their own frame, by keys too. */
function scroller(label: string, table: HTMLElement): HTMLElement {
  return element('div', { class: 'scroller', tabindex: '0', role: 'region', 'aria-label': label }, table);
}

function row(title: string, cells: readonly (PackCell | null)[]): HTMLElement {
  return element(
    'tr',
    {},
    element('th', { scope: 'row' }, title),
    ...cells.map((cell) => (cell === null ? element('td', { class: 'none' }, '–') : figureCell(title, cell))),
  );
}

function figureCell(title: string, { text, span, why, target }: PackCell): HTMLElement {
  return element(
    'td',
    { title: why ?? false },
    valueLink(target, `${title} ${text}`, text),
    span === null ? null : element('small', {}, ` ${span}`),
  );
}
