/** Groups that lie deeper in each other are no listing. */
const deepest = 64;

interface OpenGroup {
  readonly name: string;
  readonly indent: number;
  /** A heading with its settings straight below it, not further in, goes on to the next of its kind. */
  readonly isFlat: boolean;
}

/** The groups that are open at a line. */
export class GroupStack {
  private levels: readonly OpenGroup[] = [];
  private tuple: readonly string[] = [];

  constructor(private readonly nesting: 'flat' | 'indent' | 'closers') {}

  get groups(): readonly string[] {
    return this.tuple;
  }

  /** A heading; false where groups lie too deep in each other. */
  open(name: string, indent: number, isFlat: boolean): boolean {
    const kept =
      this.nesting === 'closers'
        ? this.levels
        : this.nesting === 'flat'
          ? []
          : this.levels.filter((level) => level.indent < indent);
    if (kept.length >= deepest) return false;
    this.set([...kept, { name, indent, isFlat }]);
    return true;
  }

  /** A line that ends a group; false where none is open. */
  close(): boolean {
    if (this.levels.length === 0) return false;
    this.set(this.levels.slice(0, -1));
    return true;
  }

  /** A setting stands at this indent: groups further in have ended. */
  at(indent: number): void {
    if (this.nesting !== 'indent') return;
    const kept = this.levels.filter(
      (level) => level.indent < indent || (level.isFlat && level.indent === indent),
    );
    if (kept.length < this.levels.length) this.set(kept);
  }

  private set(levels: readonly OpenGroup[]): void {
    this.levels = levels;
    this.tuple = levels.map(({ name }) => name);
  }
}
