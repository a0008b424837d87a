import { strict as assert } from 'node:assert';
import * as vscode from 'vscode';
import { checkOf, closeAll, openDemo } from './scripts';
import { until } from './until';

describe('what the explorer offers', () => {
  afterEach(closeAll);

  it('opens the scripts that were picked, to be checked', async () => {
    const [folder] = vscode.workspace.workspaceFolders ?? [];
    assert.ok(folder !== undefined);
    const picked = ['wagtail.craft', 'bittern.craft'].map((name) => vscode.Uri.joinPath(folder.uri, name));
    await vscode.commands.executeCommand('propsoff.checkFiles', picked[0], picked);
    const shown = vscode.window.tabGroups.all.flatMap(({ tabs }) => tabs.map(({ label }) => label));
    assert.deepEqual(shown.slice(-2), ['wagtail.craft', 'bittern.craft']);
  });

  it('shows records below their script, where it is told to show files so', () => {
    const patterns = vscode.workspace.getConfiguration('explorer.fileNesting').get<object>('patterns');
    assert.ok(patterns !== undefined && '*.craft' in patterns && '*.boardtext' in patterns);
  });
});

describe('the log and the restart', () => {
  afterEach(closeAll);

  it('are in the palette; after a restart scripts are checked as before', async () => {
    const commands = await vscode.commands.getCommands(true);
    assert.ok(commands.includes('propsoff.showLog') && commands.includes('propsoff.clearProof'));
    const document = await openDemo('wagtail.craft');
    await vscode.commands.executeCommand('propsoff.startChecks');
    const edit = new vscode.WorkspaceEdit();
    edit.insert(document.uri, document.positionAt(document.getText().length), '\nnothing-such = 3\n');
    assert.ok(await vscode.workspace.applyEdit(edit));
    await until('the new line to be checked', () =>
      vscode.languages.getDiagnostics(document.uri).some((found) => checkOf(found) === 'line/unknown-name'),
    );
  });
});
