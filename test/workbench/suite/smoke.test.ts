import { strict as assert } from 'node:assert';
import * as vscode from 'vscode';
import { until } from './until';

describe('the extension in an editor', () => {
  it('starts when a craft script is opened', async () => {
    const [script] = await vscode.workspace.findFiles('*.craft');
    assert.ok(script, 'the demo workspace has a craft script');
    const document = await vscode.workspace.openTextDocument(script);
    await vscode.window.showTextDocument(document);
    assert.equal(document.languageId, 'craft-script');

    await until('the extension to start by itself', () => {
      return vscode.extensions.getExtension('propsoff.propsoff')?.isActive === true;
    });
  });
});
