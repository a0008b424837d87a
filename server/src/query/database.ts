import type { Dependency } from './dependency';

/** What is noted while a value is computed. */
export interface Reading {
  readonly dependencies: Set<Dependency>;
  /** Whether it has read, directly or through others, in which variant it was asked. */
  isVaried: boolean;
}

/** What a query is asked with: a database, and the variant in which its values are wanted, such as a pack in view. */
export interface QueryContext {
  readonly database: Database;
  readonly variant: string | null;
}

/** What is kept for the next time somebody asks. */
export interface Forgettable {
  forget(): void;
}

/**
 * Values that are derived from inputs, each kept with what it was computed from. When an input is invalidated, what
 * depends on it is looked into the next time somebody asks: it is computed again only if a dependency really has
 * another value (early cut-off).
 *
 *     const mass = new Input<[part: string]>();
 *     const heavy = new Query('heavy', (shop: Shop, part: string) => { mass.read(shop, part); return … });
 *     heavy.get(shop, 'motor');
 *     shop.database.change(() => mass.invalidate(shop, 'motor'));
 */
export class Database {
  /** What is being computed, innermost last. */
  private readonly readings: Reading[] = [];
  /** What was invalidated, or lost its last dependent, and has not been asked for since. */
  private readonly idle = new Set<Forgettable>();

  /** A new revision: `invalidate` says which inputs have changed. What nobody asked for in the last one is forgotten. */
  change(invalidate: () => void): void {
    // What only the forgotten has read comes to the end of the set, and is forgotten with it.
    for (const one of this.idle) one.forget();
    this.idle.clear();
    invalidate();
  }

  get isComputing(): boolean {
    return this.readings.length > 0;
  }

  begin(): Reading {
    const reading = { dependencies: new Set<Dependency>(), isVaried: false };
    this.readings.push(reading);
    return reading;
  }

  end(): void {
    this.readings.pop();
  }

  /** What is being computed depends on this. */
  read(dependency: Dependency, isVaried: boolean): void {
    const reading = this.readings.at(-1);
    if (reading === undefined) return;
    reading.dependencies.add(dependency);
    if (isVaried) reading.isVaried = true;
  }

  /** What is being computed depends on the variant in which it was asked. */
  readVariant(): void {
    const reading = this.readings.at(-1);
    if (reading !== undefined) reading.isVaried = true;
  }

  /** To be forgotten with the next change, unless it is settled before. */
  idles(one: Forgettable): void {
    this.idle.add(one);
  }

  settled(one: Forgettable): void {
    this.idle.delete(one);
  }
}
