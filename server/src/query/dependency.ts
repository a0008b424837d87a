/** What reads dependencies: it hears when one has changed (`outdated`), or may have (`doubtful`). */
export interface Dependent {
  invalidate(state: 'doubtful' | 'outdated'): void;
}

/** What a query can read: an input, or the memo of another query. */
export abstract class Dependency {
  /** Bare where it is one: of most inputs there is only the memo of the setting. */
  private dependents: null | Dependent | Set<Dependent> = null;

  /** Brings itself up to date. */
  abstract settle(): void;

  /** Nothing depends on it any more. */
  protected abstract abandoned(): void;

  get isRead(): boolean {
    return this.dependents !== null;
  }

  addDependent(dependent: Dependent): void {
    if (this.dependents === null) this.dependents = dependent;
    else if (this.dependents instanceof Set) this.dependents.add(dependent);
    else if (this.dependents !== dependent) this.dependents = new Set([this.dependents, dependent]);
  }

  removeDependent(dependent: Dependent): void {
    if (this.dependents === dependent) this.dependents = null;
    else if (this.dependents instanceof Set) {
      this.dependents.delete(dependent);
      if (this.dependents.size === 0) this.dependents = null;
    }
    if (this.dependents === null) this.abandoned();
  }

  protected invalidateDependents(state: 'doubtful' | 'outdated'): void {
    if (this.dependents instanceof Set) for (const dependent of this.dependents) dependent.invalidate(state);
    else this.dependents?.invalidate(state);
  }
}
