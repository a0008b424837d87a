/** An input, or an answer that is computed from others; an input's answer, where it has one, goes with it. */
export interface Cell {
  readonly name: string;
  readonly shelf: Shelf;
  /** `none`: not computed; `underway`: being computed. */
  answer: unknown;
  /** What the answer was computed from. */
  reads: null | Cell | readonly Cell[];
  /** Whose answers were computed from this one. There are very many cells, most of them with few readers. */
  readers: null | Cell | Cell[] | Set<Cell>;
}

export type Shelf = Map<string, Cell>;

export const none = Symbol('none');
export const underway = Symbol('underway');

/** So many readers are looked through one by one. */
const mostInList = 64;

const nothing: readonly Cell[] = [];

export function cellOn(shelf: Shelf, name: string): Cell {
  const known = shelf.get(name);
  if (known !== undefined) return known;
  const cell: Cell = { name, shelf, answer: none, reads: null, readers: null };
  shelf.set(name, cell);
  return cell;
}

export function hasAnswer({ answer }: Cell): boolean {
  return answer !== none && answer !== underway;
}

export function readersOf({ readers }: Cell): Iterable<Cell> {
  return readers instanceof Set ? readers : listed(readers);
}

function listed(cells: null | Cell | readonly Cell[]): readonly Cell[] {
  if (cells === null) return nothing;
  return isList(cells) ? cells : [cells];
}

function isList(cells: Cell | readonly Cell[]): cells is readonly Cell[] {
  return Array.isArray(cells);
}

/** Notes what a new answer was computed from; each of them only once. */
export function linked(cell: Cell, reads: ReadonlySet<Cell>): void {
  const list = [...reads];
  cell.reads = list.length > 1 ? list : (list[0] ?? null);
  for (const read of list) addReader(read, cell);
}

/** Forgets an answer. */
export function drop(cell: Cell): void {
  cell.answer = none;
  for (const read of listed(cell.reads)) {
    removeReader(read, cell);
    forgetUnused(read);
  }
  cell.reads = null;
  forgetUnused(cell);
}

function addReader(cell: Cell, reader: Cell): void {
  const { readers } = cell;
  if (readers === null) cell.readers = reader;
  else if (readers instanceof Set) readers.add(reader);
  else if (!Array.isArray(readers)) cell.readers = [readers, reader];
  // A list that grows by itself would keep room for many more.
  else if (readers.length < mostInList) cell.readers = readers.concat(reader);
  else cell.readers = new Set(readers).add(reader);
}

function removeReader(cell: Cell, reader: Cell): void {
  const { readers } = cell;
  if (readers === reader) cell.readers = null;
  else if (readers instanceof Set) readers.delete(reader);
  else if (Array.isArray(readers)) {
    const at = readers.indexOf(reader);
    if (at >= 0) readers.splice(at, 1);
  }
}

/** What nobody reads and what has no answer need not be kept. */
function forgetUnused(cell: Cell): void {
  if (isUnread(cell.readers) && !hasAnswer(cell)) cell.shelf.delete(cell.name);
}

function isUnread(readers: Cell['readers']): boolean {
  if (readers === null) return true;
  if (readers instanceof Set) return readers.size === 0;
  return Array.isArray(readers) && readers.length === 0;
}
