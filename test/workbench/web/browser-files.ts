import { strict as assert } from 'node:assert';
import * as vscode from 'vscode';
import { closeAll, foundIn, openDemo, placeOf, untilFound } from '../suite/scripts';
import { until } from '../suite/until';

const folder = vscode.workspace.workspaceFolders?.[0]?.uri ?? vscode.Uri.file('/');

async function write(name: string, text: string): Promise<void> {
  await vscode.workspace.fs.writeFile(vscode.Uri.joinPath(folder, name), new TextEncoder().encode(text));
}

describe('in a browser, on files that only the editor knows', () => {
  afterEach(closeAll);

  it('nothing of Node is there', () => {
    assert.equal(vscode.env.uiKind, vscode.UIKind.Web);
    assert.equal(folder.scheme, 'shelf');
    for (const name of ['process', 'Buffer', 'setImmediate']) assert.ok(!(name in globalThis), name);
  });

  it('an include is read through the editor, and again when it changes', async () => {
    const uses = 'include "base.craft"\n[gyro.filter.1]\ncutoff = 2 * quiet\n';
    await write('browser-main.craft', uses);
    const document = await openDemo('browser-main.craft');
    await untilFound(document, 'line/include-missing');
    await write('base.craft', 'let quiet = 9000 Hz\n');
    const found = await untilFound(document, 'line/outside-range');
    assert.ok(found.range.contains(placeOf(document, '2 * quiet', 1)));
    await write('base.craft', 'let quiet = 90 Hz\n');
    await until('the finding to go', () => foundIn(document).length === 0);
  });

  it('a board profile of the folder is in use', async () => {
    await write('browser-board.craft', '[board]\nprofile = finch\n[arming]\ntilt-limt = 60 deg\n');
    const document = await openDemo('browser-board.craft');
    await until('only the slip to be found', () => {
      const named = foundIn(document).filter((id) => id.startsWith('line/unknown'));
      return named.length === 1 && named[0] === 'line/unknown-name';
    });
  });

  it('the text for the board is shown', async () => {
    await openDemo('sandmartin.craft');
    await vscode.commands.executeCommand('propsoff.previewBoardText');
    const preview = await until('the preview', () =>
      vscode.workspace.textDocuments.find(({ uri }) => uri.scheme === 'propsoff-board'),
    );
    await until('its text', () => preview.lineCount > 20);
  });
});
