import type { Included, IncludeSource } from '../craft/layers';
import { canonicalUri } from './canonical-uri';
import { type DiskScripts, refusedText } from './disk-scripts';
import type { FileSystem } from './file-system';
import type { Includers } from './includers';
import type { OpenBoardTexts } from './open-board-texts';
import type { OpenScript, OpenScripts } from './open-scripts';

/** Where other scripts than a craft's own are looked for: what is open counts more than the disk. */
export interface ScriptPlaces {
  readonly fileSystem: FileSystem;
  readonly open: OpenScripts;
  readonly boardTexts: OpenBoardTexts;
  readonly includers: Includers;
  /** Another one with each catalogue. */
  readonly onDisk: () => DiskScripts;
}

/** What the craft of a script asks of other scripts: what it includes, and whether they include it. */
export function includeSourceOf(key: string, places: ScriptPlaces): IncludeSource {
  return {
    open: (uri) => included(uri, key, places),
    isIncluded: () => isIncluded(key, places),
    isUsedOutside: (constant) => isUsedOutside(key, constant, places),
  };
}

function included(uri: string, fromUri: string, places: ScriptPlaces): Included {
  const { fileSystem, open, boardTexts, onDisk } = places;
  const key = canonicalUri(uri);
  const why = fileSystem.refusal(key, fromUri);
  if (why !== null) return { kind: 'refused', why };
  const opened = open.get(key);
  if (opened === undefined) return onDisk().open(key);
  const layer = boardTexts.layer(key);
  const refused = layer === undefined ? null : refusedText(layer);
  return refused ?? { kind: 'script', script: opened.script };
}

/** Whether another open script includes this one, or one that lies on the disk and is not open. */
function isIncluded(uri: string, { open, boardTexts, includers }: ScriptPlaces): boolean {
  return (
    boardTexts.has(uri) ||
    open.entries().some(([key, { craft }]) => key !== uri && craft.includes(uri)) ||
    includers.includes(uri, (includer) => !open.has(includer))
  );
}

/** Whether another script uses a constant that includes this one, itself or through others. */
function isUsedOutside(uri: string, constant: string, { open, includers }: ScriptPlaces): boolean {
  const uses = ({ craft }: OpenScript) =>
    craft.layers().layers.some(({ script }) => script.usedNames.has(constant));
  return (
    open.entries().some(([key, one]) => key !== uri && one.craft.includes(uri) && uses(one)) ||
    includers.use(uri, constant, (includer) => !open.has(includer))
  );
}
