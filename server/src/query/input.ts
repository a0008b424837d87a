import type { Database, Forgettable, QueryContext } from './database';
import { Dependency } from './dependency';
import { type Key, KeyMap } from './key-map';

/** Something outside that queries read, and that says under which key it has changed. Only what is read is kept. */
export class Input<K extends Key> {
  private readonly cells = new WeakMap<Database, KeyMap<K, InputCell<K>>>();

  /** What is being computed depends on what stands under a key. */
  read({ database }: QueryContext, ...key: K): void {
    if (!database.isComputing) return;
    const cells = this.cellsOf(database);
    const known = cells.get(key);
    const cell = known ?? new InputCell(database, cells, key);
    if (known === undefined) cells.set(key, cell);
    database.read(cell, false);
  }

  /** What stands under a key has changed. True if anything depended on it. */
  invalidate({ database }: QueryContext, ...key: K): boolean {
    const cell = this.cells.get(database)?.get(key);
    cell?.changed();
    return cell?.isRead === true;
  }

  private cellsOf(database: Database): KeyMap<K, InputCell<K>> {
    const known = this.cells.get(database);
    if (known !== undefined) return known;
    const made = new KeyMap<K, InputCell<K>>();
    this.cells.set(database, made);
    return made;
  }
}

class InputCell<K extends Key> extends Dependency implements Forgettable {
  constructor(
    private readonly database: Database,
    private readonly cells: KeyMap<K, InputCell<K>>,
    private readonly key: K,
  ) {
    super();
  }

  settle(): void {}

  changed(): void {
    this.invalidateDependents('outdated');
  }

  forget(): void {
    if (!this.isRead) this.cells.delete(this.key);
  }

  /** Not forgotten at once: what is being computed may have read it as well. */
  protected abandoned(): void {
    this.database.idles(this);
  }
}
