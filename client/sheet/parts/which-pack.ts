import type { Variant } from '../../../server/src/sheet/variants';
import type {
  FigureTable,
  PackCell,
  PackRow,
  SharedRow,
  WhichPack,
  WithheldRow,
} from '../../../server/src/sheet/which-pack';
import { element, packsTable, scroller } from '../../page/element';
import { send } from '../extension-side';
import { fold } from '../fold';
import { valueLink } from '../link';
import { wayButtons } from '../ways';
import { isAsked, whyButton } from '../why';
import { measuredRow } from './measured-beside';

export function whichPack(part: WhichPack): readonly HTMLElement[] {
  if (part.columns.length > 0) return [...figureTable(part), ...sideBySide(part.variants)];
  const how = 'Name a pack to see what it does: [pack.sprint] with chemistry, cells and capacity.';
  return [element('p', { class: 'aside' }, how)];
}

/** The same craft with one thing otherwise: what moves is shown above, old and new, and nothing is written. */
function sideBySide(variants: readonly Variant[]): readonly HTMLElement[] {
  if (variants.length === 0) return [];
  const buttons = variants.map(({ words, path, to }) =>
    element(
      'button',
      {
        type: 'button',
        'data-variant': path,
        onclick: () => send({ kind: 'try', parameter: path, ...(to === null ? {} : { to }) }),
      },
      words,
    ),
  );
  return [element('p', { class: 'levers' }, 'Side by side: the craft ', ...buttons)];
}

type PackTable = FigureTable & {
  readonly id: string;
  readonly key: readonly string[];
  readonly told?: readonly string[];
  readonly caution: string;
};

/** Figures pack by pack, then those that no pack changes; what is looked at first stands open. */
export function figureTable({
  id,
  columns,
  rows,
  shared,
  withheld,
  key,
  told = [],
  caution,
}: PackTable): readonly HTMLElement[] {
  const isKey = (row: { readonly id: string }) => key.includes(row.id);
  const isOther = (row: { readonly id: string }) => !isKey(row);
  const more = [
    ...packTables(columns, rows.filter(isOther)),
    ...sharedTables(shared.filter(isOther), 'More figures that no pack changes'),
  ];
  return [
    ...packTables(columns, rows.filter(isKey)),
    ...sharedTables(shared.filter(isKey), 'Figures that no pack changes'),
    ...unknownTable(withheld),
    ...told.map((text) => element('p', {}, text)),
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
  const table = packsTable(
    columns.length,
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
  const reasons = cells.flatMap((cell, index) => reasonOf(id, cell, columns[index] ?? ''));
  const shown = cells.map((cell) =>
    cell === null ? element('td', { class: 'none' }, '–') : figureCell(title, cell),
  );
  const mark = { 'data-figure': id, 'data-from': from.join(' ') };
  const measured = measuredRow(id, cells.length);
  if (reasons.length === 0)
    return [element('tr', mark, element('th', { scope: 'row' }, title), ...shown), measured];
  const why = element(
    'tr',
    { class: 'why', id: `${id}-why`, hidden: !isAsked(id) },
    element('td', { colspan: String(cells.length + 1) }, ...reasons, ...levers(from)),
  );
  return [
    element('tr', mark, element('th', { scope: 'row' }, whyButton(id, title, why)), ...shown),
    measured,
    why,
  ];
}

/** Figures that are not known yet keep their rows: each says on demand what it takes. */
function unknownTable(withheld: readonly WithheldRow[]): readonly HTMLElement[] {
  if (withheld.length === 0) return [];
  const rows = withheld.flatMap(({ id, title, from, text, ways }) => {
    const why = element(
      'tr',
      { class: 'why', id: `${id}-why`, hidden: !isAsked(id) },
      element('td', { colspan: '2' }, element('p', {}, text), wayButtons(ways)),
    );
    const mark = { 'data-figure': id, 'data-from': from.join(' ') };
    const head = element('th', { scope: 'row' }, whyButton(id, title, why));
    const row = element('tr', mark, head, element('td', { class: 'none' }, 'not known yet'));
    return [row, measuredRow(id, 1), why];
  });
  const label = 'Figures that are not known yet';
  return [scroller(label, element('table', { class: 'unknown' }, element('tbody', {}, ...rows)))];
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

/** More than these would drown the reason itself. */
const assumedInView = 3;

/** How it comes about with a pack, and what was assumed for that. */
function reasonOf(id: string, cell: PackCell | null, column: string): readonly HTMLElement[] {
  if (cell === null || cell.why === null) return [];
  const name = column === '' ? null : element('b', {}, `${column}: `);
  const { why, assumed } = cell;
  if (assumed.length <= assumedInView) {
    const text =
      assumed.length === 0 ? '' : `${why.endsWith('.') ? '' : '.'} Assumed: ${assumed.join('; ')}.`;
    return [element('p', {}, name, why, element('span', { class: 'aside' }, text))];
  }
  const title = [element('span', {}, `Assumed: ${assumed.length}`)];
  return [
    element('p', {}, name, why),
    fold({ id: `${id}-assumed-${column}`, name: 'more', isOpenAtFirst: false }, title, [
      element('ul', { class: 'assumed' }, ...assumed.map((text) => element('li', {}, text))),
    ]),
  ];
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
