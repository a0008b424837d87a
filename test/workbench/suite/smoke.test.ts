import { strict as assert } from 'node:assert';
import * as vscode from 'vscode';
import { openDemo } from './scripts';
import { until } from './until';

describe('the extension in an editor', () => {
  it('starts when a craft script is opened', async () => {
    const document = await openDemo('sandmartin.craft');
    assert.equal(document.languageId, 'craft-script');

    await until('the extension to start by itself', () => {
      return vscode.extensions.getExtension('propsoff.propsoff')?.isActive === true;
    });
  });
});
