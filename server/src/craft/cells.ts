import type { Answers } from './answers';
import { type Cell, cellOn, drop, hasAnswer, linked, none, readersOf, type Shelf, underway } from './cell';

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
  /** What each answer that is being computed has read so far, innermost last. */
  private readonly computing: Set<Cell>[] = [];

  /** Notes that the answer being computed depends on an input. */
  read(key: string): void {
    this.computing.at(-1)?.add(cellOn(this.inputs, key));
  }

  /** The one answer that goes with an input: it changes whenever that does. Costs less than an answer that reads it. */
  getOf<T>(input: string, compute: () => T): T {
    return this.answer(cellOn(this.inputs, input), compute);
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
    const waiting = [...inputs].flatMap((key) => this.inputs.get(key) ?? []);
    const dropped = new Set<Cell>(waiting.filter(hasAnswer));
    for (let cell = waiting.pop(); cell !== undefined; cell = waiting.pop()) {
      for (const reader of readersOf(cell)) {
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
    this.computing.at(-1)?.add(cell);
    if (cell.answer === underway) throw new Error(`${cell.name} depends on itself`);
    if (cell.answer !== none) return cell.answer as T;
    const reads = new Set<Cell>();
    this.computing.push(reads);
    cell.answer = underway;
    try {
      const value = compute();
      reads.delete(cell); // the answer of an input may read the input
      linked(cell, reads);
      cell.answer = value;
      return value;
    } finally {
      this.computing.pop();
      if (cell.answer === underway) cell.answer = none;
    }
  }
}
