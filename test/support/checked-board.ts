import { strict as assert } from 'node:assert';
import type { BoardLayer } from '../../server/src/board/layer/layer';
import { checkedBoardText } from '../../server/src/cli/report/checked-board-text';
import type { ReportedFinding } from '../../server/src/cli/report/checked-file';
import { boardWords } from '../../server/src/features/board/words/board-words';
import type { Snapshot } from '../../server/src/features/snapshot';
import { Workspace } from '../../server/src/workspace/workspace';
import { testCatalog } from './catalog';
import { scriptBeside } from './faulty-board-text';
import { MemoryFiles } from './memory-files';

/** Where the text is that is checked. */
export const uri = 'test:///work/wagtail.boardtext';
const craft = 'test:///work/wagtail.craft';

export interface Checked {
  readonly layer: BoardLayer;
  readonly snapshot: Snapshot;
  readonly findings: readonly ReportedFinding[];
  /** What the craft that includes the text finds in it besides. */
  readonly included: readonly string[];
}

/** Checks a board’s text, beside the craft that includes it. */
export async function checked(text: string, isIncluded = true): Promise<Checked> {
  const fileSystem = new MemoryFiles({ 'wagtail.boardtext': text, 'wagtail.craft': scriptBeside });
  const workspace = new Workspace({ catalog: testCatalog, fileSystem });
  const opened = workspace.openBoardText(uri, text, 1, 'wren');
  if (isIncluded) workspace.openScript(craft, scriptBeside, 1);
  await workspace.settled();
  const layer = workspace.layer(uri) ?? assert.fail('no layer');
  const words = boardWords(layer, testCatalog);
  const snapshot: Snapshot = {
    uri,
    script: opened.script,
    craft: opened.craft,
    catalog: testCatalog,
    pack: null,
    findings: () => workspace.findings(uri),
    others: () => [],
    layer: (of) => workspace.layer(of),
  };
  const included = (isIncluded ? workspace.findings(craft) : [])
    .filter(({ related: [first] }) => first?.place.script.uri === uri)
    .flatMap((finding) => [words.message(finding), words.advice(finding)]);
  const { findings } = checkedBoardText(
    'wagtail.boardtext',
    'part',
    layer,
    workspace.findings(uri),
    testCatalog,
  );
  return { layer, snapshot, findings, included };
}

/** The text with a fix made. */
export function applied(text: string, { edits }: ReportedFinding['fixes'][number]): string {
  const lines = text.split('\n');
  const placeOf = ({ line, character }: { line: number; character: number }) =>
    lines.slice(0, line).reduce((sum, one) => sum + one.length + 1, character);
  return [...edits]
    .sort((one, other) => placeOf(other.range.start) - placeOf(one.range.start))
    .reduce(
      (now, { range, newText }) =>
        now.slice(0, placeOf(range.start)) + newText + now.slice(placeOf(range.end)),
      text,
    );
}
