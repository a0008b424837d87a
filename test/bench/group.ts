import type { Catalog } from '../../server/src/catalog/catalog';
import type { Engine } from './built-engine';
import type { Measure, Runs } from './measure';

/** What measures are taken with. */
export interface Bench {
  readonly engine: Engine;
  readonly catalog: Catalog;
  readonly root: string;
  readonly runs: Runs;
}

/** Measures that are taken together, under the name that picks them. */
export interface Group {
  readonly name: string;
  /** Whether it needs the peers installed. */
  readonly hasPeers: boolean;
  measure(bench: Bench): Promise<readonly Measure[]>;
}
