/** What reads dependencies: it hears when one has changed (`outdated`), or may have (`doubtful`). */
export interface Dependent {
  invalidate(state: 'doubtful' | 'outdated'): void;
}

/** What a query can read: an input, or the memo of another query. */
export abstract class Dependency {
  /** Most have one or two: bare and in short lists, those of 10,000 settings take 1.5 MB less than in sets. */
  private dependents: null | Dependent | Dependent[] | Set<Dependent> = null;

  /** Brings itself up to date. */
  abstract settle(): void;

  /** Nothing depends on it any more. */
  protected abstract abandoned(): void;

  get isRead(): boolean {
    return this.dependents !== null;
  }

  addDependent(dependent: Dependent): void {
    const { dependents } = this;
    if (dependents instanceof Set) dependents.add(dependent);
    else if (dependents === null) this.dependents = dependent;
    else {
      const list = Array.isArray(dependents) ? dependents : [dependents];
      if (list.includes(dependent)) return;
      // A list that grows, or is made by spreading, has room to spare that is never used.
      const longer = list.concat(dependent);
      this.dependents = longer.length > longestList ? new Set(longer) : longer;
    }
  }

  removeDependent(dependent: Dependent): void {
    const { dependents } = this;
    if (dependents === dependent) this.dependents = null;
    else if (dependents instanceof Set) {
      dependents.delete(dependent);
      if (dependents.size === 0) this.dependents = null;
    } else if (Array.isArray(dependents)) {
      const rest = dependents.filter((one) => one !== dependent);
      this.dependents = rest.length < 2 ? (rest[0] ?? null) : rest;
    }
    if (this.dependents === null) this.abandoned();
  }

  protected invalidateDependents(state: 'doubtful' | 'outdated'): void {
    const { dependents } = this;
    if (dependents instanceof Set || Array.isArray(dependents))
      for (const dependent of dependents) dependent.invalidate(state);
    else dependents?.invalidate(state);
  }
}

/** A longer one would be gone through for too long. */
const longestList = 8;
