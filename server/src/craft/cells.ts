/**
 * Computed answers that know what they were computed from. When an input changes, exactly the answers that
 * read it, directly or through others, are computed again the next time somebody asks.
 */
export class Cells {
  private readonly cells = new Map<string, Cell>();
  /** Input or cell -> cells that read it. */
  private readonly readers = new Map<string, Set<string>>();
  /** The cells being computed, innermost last. */
  private readonly computing: Set<string>[] = [];
  private readonly path = new Set<string>();

  /** Notes that the answer being computed depends on an input. */
  read(key: string): void {
    this.computing.at(-1)?.add(key);
  }

  /**
   * The answer for a key, computed if it isn't known or something it read has changed. Throws when a key is
   * asked for while it is being computed: callers rule circles out beforehand.
   */
  get<T>(key: string, compute: () => T): T {
    this.read(key);
    const known = this.cells.get(key);
    if (known !== undefined) return known.value as T;
    if (this.path.has(key)) throw new Error(`${key} depends on itself`);
    return this.compute(key, compute);
  }

  /** Drops every answer that read one of the inputs. Gives the keys of what was dropped. */
  changed(inputs: Iterable<string>): ReadonlySet<string> {
    const dropped = new Set<string>();
    const waiting = [...inputs];
    for (let key = waiting.pop(); key !== undefined; key = waiting.pop()) {
      for (const reader of this.readers.get(key) ?? []) {
        if (dropped.has(reader)) continue;
        dropped.add(reader);
        waiting.push(reader);
      }
    }
    for (const key of dropped) this.drop(key);
    return dropped;
  }

  private compute<T>(key: string, compute: () => T): T {
    const reads = new Set<string>();
    this.computing.push(reads);
    this.path.add(key);
    try {
      const value = compute();
      this.cells.set(key, { value, reads });
      for (const read of reads) this.addReader(read, key);
      return value;
    } finally {
      this.computing.pop();
      this.path.delete(key);
    }
  }

  private addReader(read: string, key: string): void {
    const readers = this.readers.get(read);
    if (readers === undefined) this.readers.set(read, new Set([key]));
    else readers.add(key);
  }

  private drop(key: string): void {
    const cell = this.cells.get(key);
    if (cell === undefined) return;
    this.cells.delete(key);
    for (const read of cell.reads) {
      const readers = this.readers.get(read);
      readers?.delete(key);
      if (readers?.size === 0) this.readers.delete(read);
    }
  }
}

interface Cell {
  readonly value: unknown;
  readonly reads: ReadonlySet<string>;
}
