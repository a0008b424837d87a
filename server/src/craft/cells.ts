import type { Answers } from './answers';
import { type Cell, cellOn, drop, hasAnswer, linked, none, readersOf, type Shelf, underway } from './cell';
import { type PackShelves, shelfWith, shelvesOf } from './pack-shelves';

/**
 * Computed answers that know what they were computed from. When an input changes, exactly the answers that
 * read it, directly or through others, are computed again the next time somebody asks.
 */
export class Cells implements Answers {
  readonly isForOneLook = false;
  private readonly inputs: Shelf = new Map();
  private readonly answers: Shelf = new Map();
  /** Answers with a pack in view, by kind. Names that stay the same string are found the quickest. */
  private readonly packAnswers = new Map<string, PackShelves<Cell>>();
  /** The answers that are being computed, innermost last. */
  private readonly computing: Computing[] = [];

  /** Notes that the answer being computed depends on an input. */
  read(key: string): void {
    this.computing.at(-1)?.reads.add(cellOn(this.inputs, key));
  }

  /** The one answer that goes with an input: it changes whenever that does. Costs less than an answer that reads it. */
  getOf<T>(input: string, compute: () => T): T {
    return this.answer(cellOn(this.inputs, input), compute);
  }

  readPack(): void {
    const computing = this.computing.at(-1);
    if (computing !== undefined) computing.hasReadPack = true;
  }

  /**
   * The answer for a key, computed if it isn't known or something it read has changed. Throws when a key is
   * asked for while it is being computed: callers rule circles out beforehand.
   */
  get<T>(key: string, compute: () => T): T {
    return this.answer(cellOn(this.answers, key), compute);
  }

  /**
   * The answer of a kind (`setting`, `figure`) for a name with a pack in view; otherwise as `get`. One that did not
   * read which pack that is holds for all of them and is kept once.
   */
  getWith<T>(pack: string | null, kind: string, name: string, compute: () => T): T {
    const shelves = shelvesOf(this.packAnswers, kind);
    const { shared } = shelves;
    const forAll = shared.get(name);
    if (forAll !== undefined && hasAnswer(forAll)) return this.answer(forAll, compute);
    const own = cellOn(shelfWith(shelves, pack), name);
    if (own.answer === none) {
      const { value, reads, hasReadPack } = this.computed(own, compute);
      if (!hasReadPack) {
        own.shelf.delete(name);
        return this.kept(cellOn(shared, name), value, reads);
      }
      this.kept(own, value, reads);
    }
    this.readPack();
    return this.answer(own, compute);
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

  private answer<T>(cell: Cell, compute: () => T): T {
    if (cell.answer === underway) throw new Error(`${cell.name} depends on itself`);
    if (cell.answer === none) {
      const { value, reads } = this.computed(cell, compute);
      return this.kept(cell, value, reads);
    }
    this.computing.at(-1)?.reads.add(cell);
    return cell.answer as T;
  }

  private computed<T>(cell: Cell, compute: () => T): Computing & { readonly value: T } {
    const computing: Computing = { reads: new Set(), hasReadPack: false };
    this.computing.push(computing);
    cell.answer = underway;
    try {
      const value = compute();
      return { value, reads: computing.reads, hasReadPack: computing.hasReadPack };
    } finally {
      this.computing.pop();
      cell.answer = none;
    }
  }

  private kept<T>(cell: Cell, value: T, reads: Set<Cell>): T {
    reads.delete(cell); // the answer of an input may read the input
    linked(cell, reads);
    cell.answer = value;
    this.computing.at(-1)?.reads.add(cell);
    return value;
  }
}

/** An answer that is being computed. */
interface Computing {
  /** What it has read so far. */
  readonly reads: Set<Cell>;
  /** Whether it has read which pack is in view. */
  hasReadPack: boolean;
}
