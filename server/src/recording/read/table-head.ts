import { dialectOf, isMeasured, isNumberCell, missingCell, mostFrequent, vectorParts } from './dialect';
import { UnreadableRecording } from './source';
import { type Dialect, splitCells } from './split-cells';

/** A column as the file prints it. */
export interface TableColumn {
  /** As printed, with its unit; `column 3` where the file prints none; a repeated one with its count, `x (2)`. */
  readonly heading: string;
  /** The cell of a row that it stands in, counted from 0. */
  readonly cell: number;
  /** Which number of a vector in this cell; null where the cell is one number. */
  readonly part: number | null;
}

/** What the first lines of a file tell of all its rows. */
export interface TableHead {
  readonly dialect: Dialect;
  readonly columns: readonly TableColumn[];
  /** Cells of a row, without empty ones that trailing separators make. */
  readonly cells: number;
  /** How many lines stand above the first row, headings and comments included. */
  readonly linesAbove: number;
  /** The line of headings as it is printed, which may come again; null where there is none. */
  readonly headingLine: string | null;
  /** Whether a comment above the headings says that the recording is simulated. */
  readonly isSimulated: boolean;
  /** Sentences about lines that were not read and headings that could not be used. */
  readonly remarks: readonly string[];
}

/** From this line on a file is taken to be in its stride. */
const looked = 400;
/** So many lines show how all are written. */
const judged = 100;

/** Reads the head of a table of which these are the first lines, none cut. */
export function tableHead(text: string): TableHead {
  const lines = text.split(/\r?\n/, 2 * looked);
  const filled = lines.filter((line) => line.trim() !== '' && !isComment(line));
  if (filled.length === 0) throw new UnreadableRecording(nothing(text));
  const start = Math.min(Math.floor(filled.length / 2), looked);
  const later = filled.slice(start, start + judged);
  const dialect = dialectOf(later);
  const split = later.map((line) => splitCells(line, dialect));
  const width = mostFrequent(split.map((row) => row.length));
  // Some cells at the end may be filled in a few rows only.
  const rows = split.filter((row) => row.length === width).map(withoutEmptyEnd);
  const cells = Math.max(...rows.map((row) => row.length));
  const numeric = numericCells(rows, dialect);
  const first = lines.findIndex((line) => isRow(line, dialect, { cells, width }, numeric));
  if (first < 0 || numeric.size === 0) throw new UnreadableRecording(noRows(filled, dialect));
  const sample = splitCells(lines[first] ?? '', dialect);
  const isSimulated = lines.slice(0, first).some((line) => /^\s*#+\s*simulated\b/i.test(line));
  const { named, ...rest } = headed(lines.slice(0, first), dialect, cells, sample);
  return {
    dialect,
    cells: Math.max(cells, named),
    linesAbove: first,
    isSimulated,
    ...rest,
  };
}

function isComment(line: string): boolean {
  return line.trimStart().startsWith('#');
}

/** Without empty cells at the end, which trailing separators make. */
function filledCells(line: string, dialect: Dialect): readonly string[] {
  return withoutEmptyEnd(splitCells(line, dialect));
}

function withoutEmptyEnd(cells: readonly string[]): readonly string[] {
  return cells.slice(0, cells.findLastIndex((cell) => cell !== '') + 1);
}

/** Cells that hold a number in most rows. */
function numericCells(rows: readonly (readonly string[])[], dialect: Dialect): ReadonlySet<number> {
  const count = Math.max(0, ...rows.map((row) => row.length));
  const isNumber = (cell: string) => isNumberCell(cell, dialect) || vectorParts(cell) !== null;
  const found = Array.from({ length: count }, (_, cell) => cell).filter((cell) => {
    const texts = rows.map((row) => row[cell] ?? '').filter((text) => !missingCell.test(text));
    return texts.length > 0 && texts.filter(isNumber).length >= 0.8 * texts.length;
  });
  return new Set(found);
}

function isRow(
  line: string,
  dialect: Dialect,
  { cells, width }: { readonly cells: number; readonly width: number },
  numeric: ReadonlySet<number>,
): boolean {
  if (line.trim() === '' || isComment(line)) return false;
  const row = filledCells(line, dialect);
  if (row.length > width || row.length < cells / 2) return false;
  const measured = [...numeric].filter((cell) => isMeasured(row[cell] ?? '', dialect)).length;
  const numbers = row.filter((cell) => isNumberCell(cell, dialect) || vectorParts(cell) !== null).length;
  return measured > numeric.size / 2 && numbers > 0;
}

/** The columns by the lines above the first row: headings, perhaps with a line of units below. */
function headed(above: readonly string[], dialect: Dialect, cells: number, sample: readonly string[]) {
  const candidates = above.flatMap((line, at) => (line.trim() === '' ? [] : [{ line, at }])).reverse();
  const plain = candidates.filter(({ line }) => !isComment(line));
  const nearest = plain[0] ?? candidates[0];
  const texts = nearest === undefined ? [] : headingCells(nearest.line, dialect, cells);
  const isUnits = plain.length > 1 && texts.length > 0 && texts.every(isUnitCell);
  const heading = isUnits ? plain[1] : nearest;
  const names = heading === undefined ? [] : headingCells(heading.line, dialect, cells);
  // A last column may have no name, if there is room for one; and rows may have empty cells at their end.
  const hasRoom = (line: string, count: number) =>
    count > cells ? sample.length >= count : splitCells(line, dialect).length >= cells;
  const fits = heading !== undefined && names.length > 0 && hasRoom(heading.line, names.length);
  const read = heading === undefined || !fits ? 0 : isUnits ? 2 : 1;
  const unread = plain.length - Math.min(read, plain.length);
  return {
    columns: columnsOf(fits ? names : [], isUnits ? texts : [], cells, sample),
    named: fits ? names.length : 0,
    headingLine: fits && heading !== undefined ? heading.line.trim() : null,
    remarks: [
      ...(names.length > 0 && !fits
        ? [
            `There are ${names.length} headings above rows of ${cells} cells, so nobody can say which belongs to which; the columns are called by their number. Mend the line of headings and read the file again.`,
          ]
        : []),
      ...(fits && unread > 0
        ? [`${unread === 1 ? 'A line' : `${unread} lines`} above the headings: not read.`]
        : []),
    ],
  };
}

/** Without empty ones at the end, unless rows have cells there. */
function headingCells(line: string, dialect: Dialect, cells: number): readonly string[] {
  const text = isComment(line) ? line.trimStart().replace(/^#+\s*/, '') : line;
  const [all, filled] = [splitCells(text, dialect), filledCells(text, dialect)];
  return filled.length > 0 && filled.length < cells && all.length >= cells ? all.slice(0, cells) : filled;
}

/** `[s]`, `(deg/s)`, `rad/s`, or nothing: a cell of a line of units. */
function isUnitCell(text: string): boolean {
  return (
    text === '' ||
    /^[[(].*[\])]$/.test(text) ||
    /^(?:-|%|n?s|[mµu]s|[mk]?[AVW]|deg.*|rad.*|rpm|Hz|m\/s.*|g)$/.test(text)
  );
}

function columnsOf(
  names: readonly string[],
  units: readonly string[],
  cells: number,
  sample: readonly string[],
): readonly TableColumn[] {
  const used = new Map<string, number>();
  const once = (name: string) => {
    const count = (used.get(name) ?? 0) + 1;
    used.set(name, count);
    return count === 1 ? name : `${name} (${count})`;
  };
  return Array.from({ length: Math.max(cells, names.length) }, (_, cell) => cell).flatMap(
    (cell): readonly TableColumn[] => {
      const name = names[cell] ?? '';
      const unit = (units[cell] ?? '').replace(/^[[(]|[\])]$/g, '');
      const heading = `${name === '' ? `column ${cell + 1}` : name}${unit === '' ? '' : ` [${unit}]`}`;
      const parts = vectorParts(sample[cell] ?? '');
      return parts === null
        ? [{ heading: once(heading), cell, part: null }]
        : parts.map((_part, part) => ({ heading: once(`${heading}[${part}]`), cell, part }));
    },
  );
}

function nothing(text: string): string {
  return text.trim() === ''
    ? 'The file is empty; record and export it again.'
    : 'The file holds nothing but comments; export the recording with its rows.';
}

function noRows(lines: readonly string[], dialect: Dialect): string {
  const first = splitCells(lines[0] ?? '', dialect);
  return lines.length === 1 && first.length > 1
    ? `The file holds ${first.length} headings and no rows; record again, and look whether the log was full.`
    : 'No rows of numbers were found in the first lines of this file; export the recording as columns of text, a line for each row.';
}
