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
import { hold, kept } from '../kept';
import { valueLink } from '../link';
import { wayButtons } from '../ways';
import { withReason } from '../why';
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
    ...packTable(`${id} more`, columns, rows.filter(isOther)),
    ...sharedTable(`${id} more shared`, shared.filter(isOther), 'More figures that no pack changes'),
  ];
  return [
    ...packTable(id, columns, rows.filter(isKey)),
    ...sharedTable(`${id} shared`, shared.filter(isKey), 'Figures that no pack changes'),
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

function packTable(
  name: string,
  columns: readonly string[],
  rows: readonly PackRow[],
): readonly HTMLElement[] {
  if (rows.length === 0) return [];
  const names = columns.map((column) => element('th', { scope: 'col' }, column));
  const head = element('thead', {}, element('tr', {}, element('td', {}), ...names));
  const bodies = rows.map((row) => keptRow(name, row, row.cells, columns));
  return [tableOf(name, 'Packs side by side', columns.length, [head, ...bodies])];
}

function sharedTable(name: string, rows: readonly SharedRow[], label: string): readonly HTMLElement[] {
  if (rows.length === 0) return [];
  const bodies = rows.map((row) => keptRow(name, row, [row.cell], ['']));
  return [tableOf(name, label, 1, bodies)];
}

/** The table of a name stays where it is, and scrolled as it is, whatever its rows are by now. */
function tableOf(name: string, label: string, packs: number, rows: readonly HTMLElement[]): HTMLElement {
  const shown = kept(`table ${name}`, `${label} ${packs}`, () => scroller(label, packsTable(packs)));
  if (shown.firstElementChild !== null) hold(shown.firstElementChild, rows);
  return shown;
}

type Row = Pick<PackRow, 'id' | 'title' | 'from'>;

function keptRow(
  table: string,
  row: Row,
  cells: readonly (PackCell | null)[],
  columns: readonly string[],
): HTMLElement {
  const shows = JSON.stringify([row, columns]);
  return kept(`${table} row ${row.id}`, shows, () => drawnRow(row, cells, columns));
}

/** A figure's row, and below it, on demand, how it comes about. */
function drawnRow(
  { id, title, from }: Row,
  cells: readonly (PackCell | null)[],
  columns: readonly string[],
): HTMLElement {
  const shown = cells.map((cell) =>
    cell === null ? element('td', { class: 'none' }, '–') : figureCell(title, cell),
  );
  if (cells.every((cell) => cell === null || cell.why === null))
    return figureBody({ id, from, cells: shown }, element('span', {}, title), null);
  const { button, row } = withReason(id, title, cells.length + 1, () => [
    ...cells.flatMap((cell, index) => reasonOf(id, cell, columns[index] ?? '')),
    ...levers(from),
  ]);
  return figureBody({ id, from, cells: shown }, button, row);
}

/** Figures that are not known yet keep their rows: each says on demand what it takes. */
function unknownTable(withheld: readonly WithheldRow[]): readonly HTMLElement[] {
  if (withheld.length === 0) return [];
  const bodies = withheld.map(({ id, title, from, text, ways }) => {
    const { button, row } = withReason(id, title, 2, () => [element('p', {}, text), wayButtons(ways)]);
    const cells = [element('td', { class: 'none' }, 'not known yet')];
    return figureBody({ id, from, cells }, button, row);
  });
  const label = 'Figures that are not known yet';
  return [scroller(label, element('table', { class: 'unknown' }, ...bodies))];
}

/** The rows of a figure: what it is, what was measured of it, and how it comes about. */
function figureBody(
  { id, from, cells }: Pick<Row, 'id' | 'from'> & { readonly cells: readonly HTMLElement[] },
  title: HTMLElement,
  why: HTMLElement | null,
): HTMLElement {
  const mark = { 'data-figure': id, 'data-from': from.join(' ') };
  const row = element('tr', mark, element('th', { scope: 'row' }, title), ...cells);
  return element('tbody', {}, row, measuredRow(id, cells.length), why);
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
