import type { Answers } from './answers';

/**
 * Computed answers that know what they were computed from. When an input changes, exactly the answers that
 * read it, directly or through others, are computed again the next time somebody asks.
 */
export class Cells implements Answers {
  readonly isForOneLook = false;
  private readonly inputs: Shelf = new Map();
  private readonly answers: Shelf = new Map();
  /** Answers with a pack in view: by kind, then by pack. Names that stay the same string are found the quickest. */
  private readonly packAnswers = new Map<string, Map<string | null, Shelf>>();
  /** What is being computed, innermost last. */
  private readonly computing: Cell[] = [];

  /** Notes that the answer being computed depends on an input. */
  read(key: string): void {
    this.computing.at(-1)?.reads.add(cellOn(this.inputs, key));
  }

  /** Every pack has its own answers here. */
  readPack(): void {}

  /**
   * The answer for a key, computed if it isn't known or something it read has changed. Throws when a key is
   * asked for while it is being computed: callers rule circles out beforehand.
   */
  get<T>(key: string, compute: () => T): T {
    return this.answer(cellOn(this.answers, key), compute);
  }

  /** The answer of a kind (`setting`, `figure`) for a name with a pack in view; otherwise as `get`. */
  getWith<T>(pack: string | null, kind: string, name: string, compute: () => T): T {
    return this.answer(cellOn(this.shelfOf(kind, pack), name), compute);
  }

  /** Drops every answer that read one of the inputs. Gives the names of what was dropped. */
  changed(inputs: Iterable<string>): ReadonlySet<string> {
    const dropped = new Set<Cell>();
    const waiting = [...inputs].flatMap((key) => this.inputs.get(key) ?? []);
    for (let cell = waiting.pop(); cell !== undefined; cell = waiting.pop()) {
      for (const reader of cell.readers) {
        if (dropped.has(reader)) continue;
        dropped.add(reader);
        waiting.push(reader);
      }
    }
    for (const cell of dropped) drop(cell);
    return new Set([...dropped].map(({ name }) => name));
  }

  private shelfOf(kind: string, pack: string | null): Shelf {
    const ofKind = this.packAnswers.get(kind) ?? new Map<string | null, Shelf>();
    this.packAnswers.set(kind, ofKind);
    const shelf: Shelf = ofKind.get(pack) ?? new Map();
    ofKind.set(pack, shelf);
    return shelf;
  }

  private answer<T>(cell: Cell, compute: () => T): T {
    this.computing.at(-1)?.reads.add(cell);
    if (cell.answer !== null) return cell.answer.value as T;
    if (this.computing.includes(cell)) throw new Error(`${cell.name} depends on itself`);
    this.computing.push(cell);
    try {
      const value = compute();
      cell.answer = { value };
      for (const read of cell.reads) read.readers.add(cell);
      return value;
    } finally {
      this.computing.pop();
      if (cell.answer === null) cell.reads.clear();
    }
  }
}

/** An input or an answer. */
interface Cell {
  readonly name: string;
  readonly shelf: Shelf;
  /** Null: not computed, or an input. */
  answer: { readonly value: unknown } | null;
  readonly reads: Set<Cell>;
  readonly readers: Set<Cell>;
}

type Shelf = Map<string, Cell>;

function cellOn(shelf: Shelf, name: string): Cell {
  const known = shelf.get(name);
  if (known !== undefined) return known;
  const cell: Cell = { name, shelf, answer: null, reads: new Set(), readers: new Set() };
  shelf.set(name, cell);
  return cell;
}

function drop(cell: Cell): void {
  cell.answer = null;
  for (const read of cell.reads) {
    read.readers.delete(cell);
    forgetUnused(read);
  }
  cell.reads.clear();
  forgetUnused(cell);
}

/** What nobody reads and what has no answer need not be kept. */
function forgetUnused({ readers, answer, shelf, name }: Cell): void {
  if (readers.size === 0 && answer === null) shelf.delete(name);
}
