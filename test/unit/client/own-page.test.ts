import assert from 'node:assert/strict';
import type * as vscode from 'vscode';
import { URI } from 'vscode-uri';
import type { ownPage as Making } from '../../../client/src/own-page';
import '../../support/stub-editor';

/** A page of ours as the editor would get it. */
function pageOf(name: 'sheet' | 'learn' | 'compare' | 'card' | 'find' | 'recording'): string {
  const { ownPage } = require('../../../client/src/own-page') as { ownPage: typeof Making };
  const webview = { cspSource: 'https://pages.example', asWebviewUri: (uri: unknown) => uri };
  const media = URI.file('/the extension/dist');
  return ownPage(webview as unknown as vscode.Webview, media, 'n0nce', { name, title: 'A page' });
}

describe('the policy of our pages (J03)', () => {
  for (const name of ['sheet', 'learn', 'compare', 'card', 'find', 'recording'] as const) {
    it(`lets ${name} load our own style and run our own script, and nothing else`, () => {
      const page = pageOf(name);
      const [, policy = ''] = /http-equiv="Content-Security-Policy" content="([^"]*)"/.exec(page) ?? [];
      assert.deepEqual(
        policy.split(';').map((rule) => rule.trim()),
        ["default-src 'none'", 'style-src https://pages.example', "script-src 'nonce-n0nce'"],
      );
      assert.deepEqual(
        [...page.matchAll(/<script\b[^>]*>/g)].map(([tag]) => / nonce="n0nce" src="/.test(tag)),
        [true],
      );
      assert.doesNotMatch(page, /<style|\sstyle=|\son[a-z]+=|javascript:/i);
      assert.match(page, /the%20extension/);
    });
  }
});
