/** Where a craft's computed answers are kept: followed through every change (`Cells`), or for one look (`OnceCells`). */
export interface Answers {
  /** Whether no change is expected: then going through all lines once is worth while. */
  readonly isForOneLook: boolean;
  /** Notes that the answer being computed depends on an input. */
  read(key: string): void;
  /** Notes that the answer being computed depends on which pack is in view. */
  readPack(): void;
  /** The one answer that goes with an input: it changes whenever that does. */
  getOf<T>(input: string, compute: () => T): T;
  /** The answer for a key, computed if it isn't known. Throws when it is being computed already. */
  get<T>(key: string, compute: () => T): T;
  /** The answer of a kind (`setting`, `figure`) for a name with a pack in view; otherwise as `get`. */
  getWith<T>(pack: string | null, kind: string, name: string, compute: () => T): T;
  /** Drops every answer that read one of the inputs. Gives the names of what was dropped. */
  changed(inputs: Iterable<string>): ReadonlySet<string>;
}
