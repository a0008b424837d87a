import type {
  FigureTable,
  PackCell,
  PackRow,
  SharedRow,
  WhichPack,
} from '../../../server/src/sheet/which-pack';
import { element, scroller } from '../../page/element';
import { send } from '../extension-side';
import { fold } from '../fold';
import { valueLink } from '../link';
import { isAsked, whyButton } from '../why';

export function whichPack(part: WhichPack): readonly HTMLElement[] {
  if (part.columns.length > 0) return figureTable(part);
  const how = 'Name a pack to see what it does: [pack.sprint] with chemistry, cells and capacity.';
  return [element('p', { class: 'aside' }, how)];
}

type Shown = FigureTable & {
  readonly id: string;
  readonly key: readonly string[];
  readonly caution: string;
};

/** Figures pack by pack, then those that no pack changes; what is looked at first stands open. */
export function figureTable({ id, columns, rows, shared, key, caution }: Shown): readonly HTMLElement[] {
  const isKey = (row: { readonly id: string }) => key.includes(row.id);
  const isOther = (row: { readonly id: string }) => !isKey(row);
  const more = [
    ...packTables(columns, rows.filter(isOther)),
    ...sharedTables(shared.filter(isOther), 'More figures that no pack changes'),
  ];
  return [
    ...packTables(columns, rows.filter(isKey)),
    ...sharedTables(shared.filter(isKey), 'Figures that no pack changes'),
    ...(more.length === 0 ? [] : [moreFigures(id, more)]),
    element('p', { class: 'aside' }, caution),
  ];
}

function moreFigures(part: string, tables: readonly HTMLElement[]): HTMLElement {
  const title = [element('span', {}, 'More figures')];
  return fold({ id: `${part}-more`, name: 'more', isOpenAtFirst: false }, title, tables);
}

function packTables(columns: readonly string[], rows: readonly PackRow[]): readonly HTMLElement[] {
  return rows.length === 0 ? [] : [packTable(columns, rows)];
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
    element('tbody', {}, ...rows.flatMap((one) => row(one, one.cells, columns))),
  );
  return scroller('Packs side by side', table);
}

function sharedTables(shared: readonly SharedRow[], label: string): readonly HTMLElement[] {
  if (shared.length === 0) return [];
  const body = element('tbody', {}, ...shared.flatMap((one) => row(one, [one.cell], [''])));
  return [scroller(label, element('table', {}, body))];
}

/** A figure's row, and below it, on demand, how it comes about. */
function row(
  { id, title, from }: Pick<PackRow, 'id' | 'title' | 'from'>,
  cells: readonly (PackCell | null)[],
  columns: readonly string[],
): readonly HTMLElement[] {
  const reasons = cells.flatMap((cell, index) => reasonOf(cell, columns[index] ?? ''));
  const shown = cells.map((cell) =>
    cell === null ? element('td', { class: 'none' }, '–') : figureCell(title, cell),
  );
  const mark = { 'data-figure': id, 'data-from': from.join(' ') };
  if (reasons.length === 0) return [element('tr', mark, element('th', { scope: 'row' }, title), ...shown)];
  const why = element(
    'tr',
    { class: 'why', id: `${id}-why`, hidden: !isAsked(id) },
    element('td', { colspan: String(cells.length + 1) }, ...reasons, ...levers(from)),
  );
  return [element('tr', mark, element('th', { scope: 'row' }, whyButton(id, title, why)), ...shown), why];
}

/** What the pilot can turn: settings that other values can be tried for. */
function levers(from: readonly string[]): readonly HTMLElement[] {
  const named = from.filter((name) => !name.replace('pack.<name>', '').includes('<'));
  if (named.length === 0) return [];
  const buttons = named.map((parameter) =>
    element(
      'button',
      { type: 'button', onclick: () => send({ kind: 'try', parameter }) },
      parameter.replace('<name>.', ''),
    ),
  );
  return [element('p', { class: 'levers' }, 'Try another value of ', ...buttons)];
}

/** Each pack's reason; the same words once. */
function reasonOf(cell: PackCell | null, column: string): readonly HTMLElement[] {
  if (cell === null || cell.why === null) return [];
  const assumed = cell.assumed.length === 0 ? '' : ` Assumed: ${cell.assumed.join('; ')}.`;
  const name = column === '' ? null : element('b', {}, `${column}: `);
  return [element('p', {}, name, cell.why, element('span', { class: 'aside' }, assumed))];
}

function figureCell(title: string, { text, span, place, target }: PackCell): HTMLElement {
  return element(
    'td',
    {},
    valueLink(target, `${title} ${text}`, text),
    span === null ? null : element('small', {}, ` ${span}`),
    place === null ? null : element('small', { class: 'sentence' }, ` ${place}`),
  );
}
