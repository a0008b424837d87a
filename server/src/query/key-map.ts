/** One step of a key: a word, a number, nothing, or an object that is itself and no other. */
export type KeyStep = string | number | null | object;

/** What something is known by: `['setting', 'sprint', 'motor.idle']`. Steps hold any characters; nobody takes a key apart. */
export type Key = readonly KeyStep[];

/** A map whose keys are tuples of steps: `map.set(['file', uri], 1)`. Keys that begin alike share their beginning. */
export class KeyMap<K extends Key, V extends NonNullable<unknown>> {
  /** By the last step, undefined where there is none: of thousands of keys none has a map of its own. */
  private readonly ends = new Map<KeyStep | undefined, V>();
  /** By a step that others follow. */
  private readonly below = new Map<KeyStep | undefined, KeyMap<K, V>>();

  get isEmpty(): boolean {
    return this.ends.size === 0 && this.below.size === 0;
  }

  get(key: K): V | undefined {
    const last = key.length - 1;
    let node: KeyMap<K, V> | undefined = this;
    for (let at = 0; at < last; at += 1) {
      node = node.below.get(key[at]);
      if (node === undefined) return undefined;
    }
    return node.ends.get(key[last]);
  }

  has(key: K): boolean {
    return this.get(key) !== undefined;
  }

  set(key: K, value: V): void {
    const last = key.length - 1;
    let node: KeyMap<K, V> = this;
    for (let at = 0; at < last; at += 1) node = node.under(key[at]);
    node.ends.set(key[last], value);
  }

  delete(key: K): void {
    this.prune(key, 0);
  }

  *values(): Iterable<V> {
    yield* this.ends.values();
    for (const node of this.below.values()) yield* node.values();
  }

  private under(step: KeyStep | undefined): KeyMap<K, V> {
    const known = this.below.get(step);
    if (known !== undefined) return known;
    const made = new KeyMap<K, V>();
    this.below.set(step, made);
    return made;
  }

  /** Takes a key out from some step on. */
  private prune(key: K, at: number): void {
    if (at >= key.length - 1) {
      this.ends.delete(key[at]);
      return;
    }
    const next = this.below.get(key[at]);
    next?.prune(key, at + 1);
    if (next?.isEmpty === true) this.below.delete(key[at]);
  }
}
