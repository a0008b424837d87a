/** One step of a key: a word, a number, nothing, or an object that is itself and no other. */
export type Step = string | number | null | object;

/** What something is known by: `['pack', 'sprint', 'cells']`. Steps hold any characters; nobody takes a key apart. */
export type Key = readonly Step[];

/** A map whose keys are tuples of steps: `map.set(['pack', 'sprint'], 1)`. Keys that begin alike share their beginning. */
export class KeyMap<K extends Key, V extends NonNullable<unknown>> {
  private value: V | null = null;
  private below: Map<Step, KeyMap<K, V>> | null = null;

  get isEmpty(): boolean {
    return this.value === null && (this.below === null || this.below.size === 0);
  }

  get(key: K): V | undefined {
    let node: KeyMap<K, V> | undefined = this;
    for (const step of key) {
      node = node.below?.get(step);
      if (node === undefined) return undefined;
    }
    return node.value ?? undefined;
  }

  has(key: K): boolean {
    return this.get(key) !== undefined;
  }

  set(key: K, value: V): void {
    let node: KeyMap<K, V> = this;
    for (const step of key) node = node.under(step);
    node.value = value;
  }

  delete(key: K): void {
    this.prune(key, 0);
  }

  *values(): Iterable<V> {
    if (this.value !== null) yield this.value;
    if (this.below !== null) for (const node of this.below.values()) yield* node.values();
  }

  private under(step: Step): KeyMap<K, V> {
    this.below ??= new Map();
    const known = this.below.get(step);
    if (known !== undefined) return known;
    const made = new KeyMap<K, V>();
    this.below.set(step, made);
    return made;
  }

  /** Takes a key out from some step on. */
  private prune(key: K, at: number): void {
    const step = key[at];
    if (step === undefined) {
      this.value = null;
      return;
    }
    const next = this.below?.get(step);
    next?.prune(key, at + 1);
    if (next?.isEmpty === true) this.below?.delete(step);
  }
}
