import type { BoardLayer } from '../board/layer/layer';
import type { Catalog } from '../catalog/catalog';
import type { Finding } from '../checks/report/finding';
import type { Craft } from '../craft/craft';
import type { Script } from '../craft/script';

/**
 * What every language feature works on: one script as it stands, the craft that it is the root of, and what
 * was found. A feature is a pure function of a snapshot, a position and options; it runs to its end before
 * the next edit is taken in, so nothing moves under it.
 */
export interface Snapshot {
  readonly uri: string;
  readonly script: Script;
  readonly craft: Craft;
  readonly catalog: Catalog;
  /** The pack that the pilot looks at; null: none chosen, or the craft has none. */
  readonly pack: string | null;
  /** In the order of the script; computed once for a snapshot. */
  findings(): readonly Finding[];
  /** Other scripts of the workspace, as far as they are known: what no layer of this craft is. */
  others(): readonly Script[];
  /** What a board's text says that the craft includes; undefined for a script. */
  layer(uri: string): BoardLayer | undefined;
}
