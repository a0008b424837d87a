import { type ColumnRole, rolesOf } from '../containers/roles';
import { isPlainName } from '../forms/parts-of-line';
import { isSurelyValue } from '../forms/read-part';
import { cellsOf, cellsOfRow, headingsOfValues, type TableForm, unnamed } from '../forms/row';
import { type DecimalMark, numberLook } from '../number-look';
import { rangeIn, wordsApart, wordsIn } from '../range-and-words';
import { isKnownUnit } from '../unit-words';
import type { Sample } from './sample';
import { isPair } from './several';

/** A table among lines. */
export interface TableFound {
  readonly table: TableForm;
  /** The row that names the columns; null: none does. */
  readonly heading: number | null;
}

const delimiters: readonly TableForm['delimiter'][] = ['\t', '|', ';', ',', ' '];
const mostLinesBefore = 12;
const leastShare = 0.7;

/** The table that most of these lines are; null where they are none. */
export function tableIn(sample: readonly Sample[], mark: DecimalMark): TableFound | null {
  for (const delimiter of delimiters) {
    const found = headedTable(sample, delimiter);
    if (found !== null) return found;
  }
  for (const delimiter of delimiters) {
    const columns = columnsIn(sample, delimiter, mark);
    if (columns !== null)
      return { table: { delimiter, heading: false, columns: [...columns] }, heading: null };
  }
  for (const delimiter of delimiters) {
    const found = namedTable(sample, delimiter) ?? unnamedTable(sample, delimiter);
    if (found !== null) return found;
  }
  return null;
}

const leastNumbers = 2;
/** Titles stand between the rows of several tables. */
const shareOfUnnamed = 0.6;

/** A table whose first row says what several values in each row below it are called, most of which are numbers. */
function namedTable(sample: readonly Sample[], delimiter: TableForm['delimiter']): TableFound | null {
  const [first, ...rest] = sample;
  const names = first === undefined ? [] : textsOf(first.text, delimiter);
  if (first === undefined || names.length <= leastNumbers || rest.length < leastRows) return null;
  if (!names.every(isColumnName) || new Set(names).size < names.length) return null;
  const rows = rest.map(({ text }) =>
    cellsOfRow(text, delimiter, names.length).map(({ start, end }) => unquoted(text.slice(start, end))),
  );
  if (!rows.every((row) => row.length === names.length && !row.includes(''))) return null;
  const columns = names.map((_, at) => rows.map((row) => row[at] ?? ''));
  const numbers = columns.filter((column) => column.every((text) => isSurelyValue(text, '.'))).length;
  const key = columns.findIndex((column) => column.every(isPlainName));
  if (numbers < leastNumbers || key < 0) return null;
  const roles = names.map((_, at): ColumnRole => (at === key ? 'group' : 'value'));
  return { table: { delimiter, heading: true, columns: roles, names: [...names] }, heading: first.index };
}

/**
 * A table whose first column has no heading: what each row is called, with a number for each of the other columns. The
 * row of headings may come again, and titles stand between.
 */
function unnamedTable(sample: readonly Sample[], delimiter: TableForm['delimiter']): TableFound | null {
  for (const [at, { index, text }] of sample.slice(0, mostLinesBefore).entries()) {
    const names = headingsOfValues(text, delimiter);
    if (names.length < leastNumbers || !names.every(isColumnName) || new Set(names).size < names.length)
      continue;
    const rest = sample.slice(at + 1).filter((line) => line.text !== text);
    const rows = rest.filter((line) => {
      const cells = cellsOfRow(line.text, delimiter, names.length + 1).map(({ start, end }) =>
        line.text.slice(start, end),
      );
      const [key = '', ...values] = cells;
      return (
        cells.length === names.length + 1 &&
        isColumnName(key) &&
        values.every((value) => isSurelyValue(value, '.'))
      );
    });
    if (rows.length < leastRows || rows.length < shareOfUnnamed * rest.length) continue;
    const columns = [unnamed, ...names].map((_, column): ColumnRole => (column === 0 ? 'group' : 'value'));
    return { table: { delimiter, heading: true, columns, names: [unnamed, ...names] }, heading: index };
  }
  return null;
}

/** A word or a few that say what stands below them. */
function isColumnName(text: string): boolean {
  return isWordy(text) && /[\p{L}\p{N})\]]$/u.test(text) && !/[=:]/.test(text) && !isSurelyValue(text, '.');
}

/** A table whose first row names its columns. */
function headedTable(sample: readonly Sample[], delimiter: TableForm['delimiter']): TableFound | null {
  for (const [at, { index, text }] of sample.slice(0, mostLinesBefore).entries()) {
    const headings = textsOf(text, delimiter).filter(
      (heading, column, all) => heading !== '' || column < all.length - 1,
    );
    const columns = headings.length < 2 ? null : rolesOf(headings);
    if (columns === null) continue;
    const rows = sample.slice(at + 1);
    const fitting = rows.filter((row) => {
      const count = cellsOf(row.text, delimiter).length;
      return count > 1 && count <= columns.length;
    });
    if (fitting.length > 0 && fitting.length >= leastShare * rows.length)
      return { table: { delimiter, heading: true, columns: [...columns] }, heading: index };
  }
  return null;
}

function textsOf(text: string, delimiter: TableForm['delimiter']): readonly string[] {
  return cellsOf(text, delimiter).map(({ start, end }) => unquoted(text.slice(start, end)));
}

function unquoted(text: string): string {
  return text.length > 1 && /^["']/.test(text) && text.endsWith(text[0] ?? '') ? text.slice(1, -1) : text;
}

const shareOfRows = 0.8;
const leastRows = 2;

/** What the columns of rows without headings hold, by what stands in them; null where it does not show. */
function columnsIn(
  sample: readonly Sample[],
  delimiter: TableForm['delimiter'],
  mark: DecimalMark,
): readonly ColumnRole[] | null {
  const rows = sample.map(({ text }) => textsOf(text, delimiter));
  const isBarred = delimiter === '|' && sample.every(({ text }) => /^[|\u2502\u2503\u2551]/.test(text));
  const width = mostFrequent(rows.map(({ length }) => length));
  if (width < (isBarred ? 2 : 3)) return null;
  const whole = rows.filter(({ length }) => length === width);
  if (whole.length < leastRows || whole.length < shareOfRows * rows.length) return null;
  const columns = Array.from({ length: width }, (_, at) => whole.map((row) => row[at] ?? ''));
  // Cells that are settings themselves stand side by side, in no table.
  if (columns.some((column) => share(column, isSetting) > 0.5)) return null;
  if (columns.every((column) => share(column, isPair) > 0.5)) return null;
  return rolesByContent(columns, mark);
}

function mostFrequent(numbers: readonly number[]): number {
  const counts = new Map<number, number>();
  for (const number of numbers) counts.set(number, (counts.get(number) ?? 0) + 1);
  return [...counts].sort(([, one], [, other]) => other - one)[0]?.[0] ?? 0;
}

function rolesByContent(
  columns: readonly (readonly string[])[],
  mark: DecimalMark,
): readonly ColumnRole[] | null {
  const [first = []] = columns;
  const hasIndex =
    countsUp(first) && columns.length > 2 && columns.slice(1).some((column) => share(column, isWordy) > 0.9);
  const start = hasIndex ? 1 : 0;
  const name = nameColumn(columns, start);
  if (name === null || name + 1 >= columns.length) return null;
  const roles: ColumnRole[] = columns.map(() => 'other');
  if (hasIndex) roles[0] = 'index';
  for (let at = start; at < name; at += 1) roles[at] = at === name - 1 ? 'member' : 'group';
  if (name - start === 1) roles[start] = 'group';
  if (name - start > 2) return null;
  roles[name] = 'name';
  roles[name + 1] = 'value';
  const value = columns[name + 1] ?? [];
  if (!takeRest(roles, columns, name + 2, value, mark)) return null;
  // A name and values alone are read as lines: there may be more values in one line than in another.
  return hasIndex || name > start || columns.length > name + 2 || roles.length === 2 ? roles : null;
}

function countsUp(column: readonly string[]): boolean {
  const numbers = column.map(Number);
  return (
    column.every((text) => /^\d{1,7}$/.test(text)) &&
    numbers.every((one, at) => at === 0 || one > (numbers[at - 1] ?? 0))
  );
}

function isSetting(text: string): boolean {
  return /^[\p{L}\p{N}_.@/-]+\s?[=:]\s?\S/u.test(text) && !/^\d/.test(text);
}

function isWordy(text: string): boolean {
  return /^[\p{L}_@]/u.test(text) && text.length <= 60;
}

function share(column: readonly string[], holds: (text: string) => boolean): number {
  return column.filter(holds).length / column.length;
}

const leastDistinct = 0.95;

/** The column of the names: words that do not come back, but for those before it that group them. */
function nameColumn(columns: readonly (readonly string[])[], start: number): number | null {
  for (let at = start; at < Math.min(columns.length, start + 3); at += 1) {
    const column = columns[at] ?? [];
    if (share(column, isWordy) < 0.9) return null;
    const keys = column.map((_, row) => JSON.stringify(columns.slice(start, at + 1).map((one) => one[row])));
    if (new Set(keys).size >= leastDistinct * keys.length) return at;
  }
  return null;
}

/** Gives roles to what stands behind the values; false where it is not clear what that is. */
function takeRest(
  roles: ColumnRole[],
  columns: readonly (readonly string[])[],
  from: number,
  value: readonly string[],
  mark: DecimalMark,
): boolean {
  const numbers: number[] = [];
  for (let at = from; at < columns.length; at += 1) {
    const column = columns[at] ?? [];
    const filled = column.filter((text) => text !== '' && text !== '-');
    if (filled.length === 0) continue;
    if (share(filled, isKnownUnit) > 0.8) roles[at] = 'unit';
    else if (share(filled, (text) => rangeIn(text, mark) !== null) > 0.8) roles[at] = 'range';
    else if (share(filled, (text) => wordsIn(text) !== null || rangeIn(text, mark) !== null) > 0.8)
      roles[at] = 'words';
    else if (share(filled, (text) => numberLook(text, mark) !== null) > 0.5) numbers.push(at);
    else if (column.every((text, row) => text === '' || wordsApart(text, value[row] ?? '') !== null))
      roles[at] = 'words';
    else if (share(filled, isWordy) > 0.8) roles[at] = 'remark';
    else return false;
  }
  return takeNumbers(roles, columns, numbers, value, mark);
}

/** Two columns of numbers with the values between them are the least and the most; a third is what was set at first. */
function takeNumbers(
  roles: ColumnRole[],
  columns: readonly (readonly string[])[],
  numbers: readonly number[],
  values: readonly string[],
  mark: DecimalMark,
): boolean {
  if (numbers.length === 0) return true;
  if (numbers.length > 3 || numbers.length === 1) return false;
  const size = (text: string | undefined) => numberLook(text ?? '', mark)?.value ?? Number.NaN;
  for (const low of numbers) {
    for (const high of numbers) {
      if (low >= high) continue;
      const between = values.filter((value, row) => {
        const [least, most, is] = [size(columns[low]?.[row]), size(columns[high]?.[row]), size(value)];
        return (
          Number.isNaN(least) ||
          Number.isNaN(most) ||
          Number.isNaN(is) ||
          (least <= is && is <= most && least < most)
        );
      }).length;
      if (between < 0.9 * values.length) continue;
      for (const at of numbers) roles[at] = at === low ? 'low' : at === high ? 'high' : 'default';
      return true;
    }
  }
  return false;
}
