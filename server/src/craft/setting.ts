import type { Catalog, FoundParameter } from '../catalog/catalog';
import type { Problem } from '../language/ast';
import type { ScriptLine } from '../language/script-line';
import type { Script } from './script';
import type { Value } from './value';

/** A line of one of a craft's scripts. */
export interface PlacedLine {
  readonly script: Script;
  readonly line: ScriptLine;
}

/** One of very many: what the catalogue says of it is looked up when somebody asks. */
export class HeldSetting implements Setting {
  constructor(
    readonly path: string,
    private readonly catalog: Catalog,
    readonly value: Value | null,
    readonly isRefused: boolean,
    readonly origin: PlacedLine,
    readonly overridden: readonly PlacedLine[],
    readonly problems: readonly Problem[],
  ) {}

  get found(): FoundParameter {
    const found = this.catalog.parameter(this.path);
    if (found === undefined) throw new Error(`the catalogue has no ${this.path}`);
    return found;
  }
}

/** What a craft holds for one parameter with one pack in view. */
export interface Setting {
  readonly path: string;
  readonly found: FoundParameter;
  /** null: set, but its value is unknown. */
  readonly value: Value | null;
  /** The line that set it must be mended: nothing is concluded from the value, if there is one. */
  readonly isRefused: boolean;
  /** Where the value was set. */
  readonly origin: PlacedLine;
  /** Lines that the origin overrides, the last one first. */
  readonly overridden: readonly PlacedLine[];
  readonly problems: readonly Problem[];
}
