import { strict as assert } from 'node:assert';
import fc from 'fast-check';
import { TextDocument } from 'vscode-languageserver-textdocument';
import type { Finding } from '../../../server/src/checks/report/finding';
import { drawnSheet } from '../../../server/src/sheet/drawn-sheet';
import { Workspace } from '../../../server/src/workspace/workspace';
import { testCatalog } from '../../support/catalog';
import { craftAsData, findingAsData } from '../../support/craft-as-data';
import { craftScript, type LooseEdit, looseEdit } from '../../support/craft-scripts';
import { MemoryFiles } from '../../support/memory-files';
import { placed } from '../../support/placed';
import { catalogueScript } from '../inputs/catalogue-script';
import { anyText, slipped } from '../inputs/texts';
import { target } from '../target';

interface Checked {
  readonly text: string;
  readonly included: string;
  readonly edits: readonly LooseEdit[];
}

const uri = 'test:///work/main.craft';

function workspaceOver(included: string): Workspace {
  return new Workspace({
    catalog: testCatalog,
    fileSystem: new MemoryFiles({ 'one.craft': included }),
    onFault: (id, error) => {
      throw new Error(`${id} failed`, { cause: error });
    },
  });
}

/** Every mark, of findings, of what they point at and of their fixes, lies in a line that is there. */
function liesInside({ check, place, related, fixes }: Finding): void {
  const places = [
    place,
    ...related.map((one) => one.place),
    ...fixes.flatMap(({ edits }) => edits.map((edit) => edit.place)),
  ];
  for (const { script, line, start, end } of places) {
    assert.ok(script.lineNumber(line) >= 0, `${check.id} stands on a line that is gone`);
    assert.ok(
      start >= 0 && start <= end && end <= Math.max(1, line.text.length),
      `${check.id} ${start}..${end}`,
    );
  }
}

/** What everybody sees of the script; the build sheet is made as well. */
async function seen(workspace: Workspace): Promise<unknown> {
  await workspace.settled();
  const open = workspace.get(uri);
  assert.ok(open !== undefined);
  const { craft } = open;
  const findings = workspace.findings(uri);
  for (const finding of findings) liesInside(finding);
  const sheet = JSON.stringify(drawnSheet(craft, findings, craft.packs()[0] ?? null));
  assert.doesNotMatch(sheet, /\bNaN\b|\bInfinity\b|\bundefined\b/, 'the sheet shows no number that is none');
  return { craft: craftAsData(craft), findings: findings.map(findingAsData), sheet };
}

/** A whole script, what it includes and edits: rules, figures, sheet. */
export const checks = target<Checked>(
  {
    name: 'checks',
    share: 3,
    holds: 'every rule answers, every mark lies in its line, and an edited script is a fresh one',
  },
  fc.record({
    text: fc.oneof(
      { weight: 4, arbitrary: catalogueScript },
      { weight: 2, arbitrary: slipped(catalogueScript) },
      { weight: 1, arbitrary: craftScript },
      { weight: 1, arbitrary: anyText },
    ),
    included: fc.oneof(craftScript, anyText),
    edits: fc.array(looseEdit, { maxLength: 3 }),
  }),
  async ({ text, included, edits }) => {
    const workspace = workspaceOver(included);
    workspace.openScript(uri, text, 1);
    if (edits.length % 2 === 1) await seen(workspace);
    const truth = TextDocument.create(uri, 'craft-script', 1, text);
    for (const loose of edits) {
      const edit = placed(truth, loose);
      TextDocument.update(truth, [{ range: { start: edit.start, end: edit.end }, text: edit.text }], 2);
      workspace.change(uri, [edit], 2);
    }
    const fresh = workspaceOver(included);
    fresh.openScript(uri, truth.getText(), 1);
    assert.deepEqual(await seen(workspace), await seen(fresh));
    assert.equal(Object.keys(Object.prototype).length, 0, 'nothing was written into every object');
  },
);
