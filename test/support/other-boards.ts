import { loadCatalog } from '../../server/src/catalog/catalog';
import type { BoardProfile } from '../../server/src/catalog/model/board-profile';
import { Checker } from '../../server/src/checks/checker';
import { Craft } from '../../server/src/craft/craft';
import { Script } from '../../server/src/craft/script';
import type { Snapshot } from '../../server/src/features/snapshot';
import { testBundle } from './catalog';
import { type FindingSummary, summaryOf } from './findings';

/** Findings of a script on a board that doesn't ship: the small one with some parts of its hardware, or more, changed. */
export function built(
  parts: Partial<BoardProfile> & { readonly name: string },
  text: string,
): readonly FindingSummary[] {
  const model = testBundle.boards.find(({ name }) => name === 'wren');
  if (model === undefined) throw new Error('the small board is missing');
  return onBoard({ ...model, ...parts, hardware: { ...model.hardware, ...parts.hardware } }, text);
}

/** A board of which no more is known than what is told here. */
export type BareBoard = Omit<BoardProfile, 'settings'> & Partial<BoardProfile>;

/** Findings of a script on a board of its own. */
export function onBoard(board: BareBoard, text: string): readonly FindingSummary[] {
  return snapshotOn(board, text).findings().map(summaryOf);
}

/** The same for a feature; other files of the workspace by their relative paths. */
export function snapshotOn(
  board: BareBoard,
  text: string,
  files: Readonly<Record<string, string>> = {},
): Snapshot {
  const catalog = loadCatalog({ ...testBundle, boards: [{ settings: [], ...board }] });
  const checker = new Checker(catalog, (id, error) => {
    throw new Error(`rule ${id} failed`, { cause: error });
  });
  const root = new Script('test:///work/main.craft', text, catalog);
  const scripts = new Map(
    Object.entries(files).map(([path, content]) => {
      const uri = `test:///work/${path}`;
      return [uri, new Script(uri, content, catalog)];
    }),
  );
  const craft = new Craft(root, catalog, {
    open: (uri) => {
      const script = scripts.get(uri);
      return script === undefined ? { kind: 'missing' } : { kind: 'script', script };
    },
  });
  const findings = () => checker.findings(craft);
  return {
    uri: root.uri,
    script: root,
    craft,
    catalog,
    pack: craft.packs()[0] ?? null,
    findings,
    others: () => [],
    layer: () => undefined,
  };
}
