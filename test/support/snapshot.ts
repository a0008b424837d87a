import type { CraftView } from '../../server/src/craft/view';
import type { Position } from '../../server/src/features/range';
import type { Snapshot } from '../../server/src/features/snapshot';
import { Document } from '../../server/src/language/document';
import { testCatalog } from './catalog';
import { craftOf, findingsOf } from './findings';

/** Takes the first `|` out of a text and tells where it was; without one the position is the start. */
export function withoutCursor(marked: string): { readonly text: string; readonly position: Position } {
  const at = marked.indexOf('|');
  if (at < 0) return { text: marked, position: { line: 0, character: 0 } };
  const before = Document.of(marked.slice(0, at));
  const line = before.lineCount - 1;
  const character = before.lineAt(line)?.text.length ?? 0;
  return { text: marked.slice(0, at) + marked.slice(at + 1), position: { line, character } };
}

/** What a feature works on, from a text with `|` as the cursor and other files of its workspace. */
export function snapshotOf(
  textWithCursor: string,
  files: Readonly<Record<string, string>> = {},
  isIncluded?: () => boolean,
): { readonly snapshot: Snapshot; readonly position: Position } {
  const { text, position } = withoutCursor(textWithCursor);
  const craft = craftOf(text, files, isIncluded);
  const snapshot: Snapshot = {
    uri: craft.root.uri,
    script: craft.root,
    craft,
    catalog: testCatalog,
    pack: craft.packs()[0] ?? null,
    findings: () => findingsOf(craft),
    others: () => [],
    layer: () => undefined,
  };
  return { snapshot, position };
}

/** What a feature works on where only a view's craft is looked at: nothing was found in it. */
export function snapshotOfView({ craft, pack, catalog }: CraftView): Snapshot {
  const script = craft.root;
  return {
    uri: script.uri,
    script,
    craft,
    catalog,
    pack,
    findings: () => [],
    others: () => [],
    layer: () => undefined,
  };
}
