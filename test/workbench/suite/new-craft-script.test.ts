import { strict as assert } from 'node:assert';
import * as vscode from 'vscode';
import { closeAll, openText, seriousIn, untilFound } from './scripts';
import { until } from './until';

const starters = [
  'first-craft.craft',
  'racer.craft',
  'freestyle.craft',
  'hall-craft.craft',
  'long-flight.craft',
];

async function opened(file: string): Promise<vscode.TextDocument> {
  const before = new Set(vscode.workspace.textDocuments);
  await vscode.commands.executeCommand('propsoff.newCraftScript', file);
  return until('the starter to open', () => vscode.workspace.textDocuments.find((one) => !before.has(one)));
}

describe('New Craft Script', () => {
  afterEach(closeAll);

  const seen = new Set<string>();
  for (const file of starters) {
    it(`opens ${file}, a whole craft with nothing to fix and no risk`, async () => {
      const document = await opened(file);
      assert.equal(document.languageId, 'craft-script');
      assert.ok(document.isUntitled);
      seen.add(document.getText());
      // A slip at the end shows that the checks have seen the whole script; it is all that is serious.
      const edit = new vscode.WorkspaceEdit();
      edit.insert(
        document.uri,
        new vscode.Position(document.lineCount, 0),
        '\n[arming]\ntilt-limt = 60 deg\n',
      );
      assert.ok(await vscode.workspace.applyEdit(edit));
      await untilFound(document, 'line/unknown-name');
      assert.deepEqual(seriousIn(document), ['line/unknown-name']);
    });
  }

  it('opens different ones', () => assert.equal(seen.size, starters.length));

  it('opens nothing when nothing is picked', async () => {
    const before = vscode.workspace.textDocuments.length;
    const run = vscode.commands.executeCommand('propsoff.newCraftScript');
    const ended = { is: false };
    void run.then(() => {
      ended.is = true;
    });
    await until('the list to close', async () => {
      await vscode.commands.executeCommand('workbench.action.closeQuickOpen');
      return ended.is;
    });
    assert.equal(vscode.workspace.textDocuments.length, before);
  });

  it('leaves an open script as it is', async () => {
    const document = await openText('[gyro]\n');
    await opened('first-craft.craft');
    assert.equal(document.getText(), '[gyro]\n');
  });
});
