import { join } from 'node:path';
import { compileCatalog } from '../../server/build/compile-catalog';
import { loadCatalog } from '../../server/src/catalog/catalog';
import type { BoardProfile } from '../../server/src/catalog/model/board-profile';
import { Checker } from '../../server/src/checks/checker';
import { Craft } from '../../server/src/craft/craft';
import { Script } from '../../server/src/craft/script';
import { type FindingSummary, summaryOf } from './findings';

/** Findings of a script on a board that doesn't ship: the small one with some parts of its hardware, or more, changed. */
export function built(
  parts: Partial<BoardProfile> & { readonly name: string },
  text: string,
): readonly FindingSummary[] {
  const { bundle } = compileCatalog(join(__dirname, '../..'));
  const model = bundle.boards.find(({ name }) => name === 'wren');
  if (model === undefined) throw new Error('the small board is missing');
  const catalog = loadCatalog({
    ...bundle,
    boards: [{ ...model, ...parts, hardware: { ...model.hardware, ...parts.hardware } }],
  });
  const checker = new Checker(catalog, (id, error) => {
    throw new Error(`rule ${id} failed`, { cause: error });
  });
  const root = new Script('test:///work/main.craft', text, catalog);
  const craft = new Craft(root, catalog, { open: () => ({ kind: 'missing' }) });
  return checker.findings(craft).map(summaryOf);
}
