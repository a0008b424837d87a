import type {
  FigureTable,
  PackCell,
  PackRow,
  SharedRow,
  WhichPack,
} from '../../../server/src/sheet/which-pack';
import { element } from '../element';
import { fold } from '../fold';
import { valueLink } from '../link';

export function whichPack(part: WhichPack): readonly HTMLElement[] {
  if (part.columns.length > 0) return figureTable(part);
  const how = 'Name a pack to see what it does: [pack.sprint] with chemistry, cells and capacity.';
  return [element('p', { class: 'aside' }, how)];
}

/** Figures pack by pack, then those that no pack changes. */
export function figureTable({
  id,
  columns,
  rows,
  shared,
  caution,
}: FigureTable & { readonly id: string; readonly caution: string }): readonly HTMLElement[] {
  return [
    ...(rows.length === 0 ? [] : [packTable(columns, rows)]),
    ...(shared.length === 0 ? [] : [sharedTable(id, shared, rows.length === 0)]),
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

/** Folded away below figures that do differ; by themselves they stand open. */
function sharedTable(part: string, shared: readonly SharedRow[], isAlone: boolean): HTMLElement {
  const body = element('tbody', {}, ...shared.map(({ title, cell }) => row(title, [cell])));
  const table = scroller('Figures that no pack changes', element('table', {}, body));
  if (isAlone) return table;
  return fold(
    { id: `${part}-shared`, name: 'more', isOpenAtFirst: false },
    [element('span', {}, 'The same with every pack')],
    [table],
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
