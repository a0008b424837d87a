import type { Forms } from '../../../catalog/model/board-forms';
import { type ColumnRole, rolesOf } from '../containers/roles';
import type { Stretch } from '../listing';
import { afterBlanks, afterWord, isBlank, quotedAt, trimmed } from '../text/characters';
import { isSurelyValue, type PartRead, withoutQuotes, writtenAt } from './read-part';
import type { Field } from './template';

export type TableForm = NonNullable<Forms['table']>;

const bars: ReadonlySet<string> = new Set(['|', '\u2502', '\u2503', '\u2551']);

/**
 * The cells of a row, without blanks around them. Quoted cells may hold the delimiter. No library tells where in a text
 * a cell stands, and that is all that is asked for here.
 */
export function cellsOf(text: string, delimiter: TableForm['delimiter']): readonly Stretch[] {
  const [start, end] = trimmed(text);
  const isBordered = delimiter === '|' && bars.has(text[start] ?? '');
  // Tabs at the end part cells that are empty.
  const last = delimiter === '\t' ? text.length : end;
  const from = isBordered ? start + 1 : start;
  const to = isBordered && bars.has(text[end - 1] ?? '') && end - 1 > from ? end - 1 : last;
  const cells: Stretch[] = [];
  for (let at = from; at <= to; ) {
    const cellEnd = endOfCell(text, at, to, delimiter);
    const [cellStart, after] = trimmed(text, at, cellEnd);
    cells.push({ start: cellStart, end: Math.max(cellStart, after) });
    at = delimiter === ' ' ? afterBlanks(text, cellEnd, to) : cellEnd + 1;
    if (cellEnd >= to) break;
  }
  return cells;
}

function endOfCell(text: string, from: number, to: number, delimiter: TableForm['delimiter']): number {
  const begin = afterBlanks(text, from, to);
  const quoted = delimiter === ' ' ? null : quotedAt(text, begin, to);
  let at = quoted?.after ?? from;
  while (at < to && !isDelimiter(text, at, delimiter)) at += 1;
  return at;
}

function isDelimiter(text: string, at: number, delimiter: TableForm['delimiter']): boolean {
  if (delimiter === '|') return bars.has(text[at] ?? '');
  if (delimiter !== ' ') return text[at] === delimiter;
  return text[at] === '\t' || (isBlank(text[at]) && isBlank(text[at + 1]));
}

/** What the first column is called where nothing stands above it. */
export const unnamed = '-';

/** The headings of a row that has none above the names; where only blanks part them, one may be enough. */
export function headingsOfValues(text: string, delimiter: TableForm['delimiter']): readonly string[] {
  const cells = cellsOf(text.trim(), delimiter).map(({ start, end }) => text.trim().slice(start, end));
  const [only = '', ...more] = cells;
  if (delimiter === ' ' && more.length === 0) return only.split(/\s+/);
  return only === '' ? more : cells;
}

/** Whether a row is the one that names the columns of its table. */
export function namesColumns(text: string, { heading, delimiter, columns, names }: TableForm): boolean {
  if (!heading) return false;
  if (names?.[0] === unnamed) {
    const found = headingsOfValues(text, delimiter);
    return found.length === names.length - 1 && found.every((one, at) => one === names[at + 1]);
  }
  const headings = cellsOf(text.trimEnd(), delimiter).map((cell) => {
    const { start, end } = withoutQuotes(text, cell);
    return text.slice(start, end);
  });
  const [own, known] = names === undefined ? [rolesOf(headings), columns] : [headings, names];
  return own?.length === known.length && own.every((one, at) => one === known[at]);
}

const said: ReadonlySet<ColumnRole> = new Set(['unit', 'range', 'low', 'high', 'words', 'default', 'remark']);
const placeholders: ReadonlySet<string> = new Set(['', '-', '\u2013', '\u2014', 'n/a', 'none']);

/** The setting of a row; null where its name or its value has no cell. */
export function readRow(text: string, { delimiter, columns }: TableForm): PartRead | null {
  const all = cellsOf(text, delimiter);
  const cells = all.slice(0, columns.length);
  const cellOf = (role: ColumnRole) => cells[columns.indexOf(role)];
  const name = inner(text, cellOf('name'));
  const value = cells[columns.indexOf('value')];
  if (name === null || value === undefined || name.end <= name.start || hasMore(cells, columns.length))
    return null;
  const stated = columns.flatMap((role, at) => {
    const cell = withoutMark(text, inner(text, cells[at]), role);
    if (!said.has(role) || cell === null || placeholders.has(text.slice(cell.start, cell.end))) return [];
    return [[role as Field, cell] as const];
  });
  return {
    groups: (['group', 'member'] as const).flatMap((role) => {
      const cell = inner(text, cellOf(role));
      return cell === null || cell.end <= cell.start ? [] : [cell];
    }),
    name,
    ...writtenAt(text, value),
    rest: value,
    isLoose: false,
    said: stated,
  };
}

/** The settings of a row that holds several: one for each value, called as its column is; none where a cell is missing. */
export function readValuesOfRow(
  text: string,
  { delimiter, columns }: Pick<TableForm, 'delimiter' | 'columns'>,
  names: readonly string[],
): readonly PartRead[] {
  const cells = cellsOfRow(text, delimiter, columns.length);
  const key = inner(text, cells[columns.indexOf('group')]);
  if (cells.length !== columns.length || key === null || key.end <= key.start) return [];
  // A title between the rows may have as many words as they have cells.
  if (
    names[0] === unnamed &&
    !cells.slice(1).some(({ start, end }) => isSurelyValue(text.slice(start, end), '.'))
  )
    return [];
  return columns.flatMap((role, at) => {
    const [cell, called] = [cells[at], names[at]];
    if (role !== 'value' || cell === undefined || called === undefined) return [];
    return {
      groups: [key],
      called,
      name: { start: cell.start, end: cell.start },
      ...writtenAt(text, cell),
      rest: cell,
      isLoose: false,
      said: [],
    };
  });
}

/** The cells of a row; where one is as wide as its column, a single blank may part it from the next. */
export function cellsOfRow(
  text: string,
  delimiter: TableForm['delimiter'],
  count: number,
): readonly Stretch[] {
  const cells = cellsOf(text, delimiter);
  if (delimiter !== ' ' || cells.length >= count) return cells;
  const words: Stretch[] = [];
  for (let at = afterBlanks(text, 0); at < text.length && words.length <= count; ) {
    const end = afterWord(text, at);
    words.push({ start: at, end });
    at = afterBlanks(text, end);
  }
  return words.length === count ? words : cells;
}

/** Whether a row holds more than its heading names. */
function hasMore(cells: readonly Stretch[], columns: number): boolean {
  return cells.slice(columns).some(({ start, end }) => end > start);
}

/** A remark without the mark of a comment before it. */
function withoutMark(text: string, cell: Stretch | null, role: ColumnRole): Stretch | null {
  if (cell === null || role !== 'remark') return cell;
  const mark = /^[;#/-]{1,4} {1,8}/.exec(text.slice(cell.start, cell.end))?.[0] ?? '';
  return { start: cell.start + mark.length, end: cell.end };
}

/** What stands in a cell, without quotes around it. */
function inner(text: string, cell: Stretch | undefined): Stretch | null {
  return cell === undefined ? null : withoutQuotes(text, cell);
}
