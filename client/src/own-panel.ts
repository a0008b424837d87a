import { randomBytes } from 'node:crypto';
import * as vscode from 'vscode';
import { ownPage, type PageName } from './own-page';

/** A page of ours in an editor of its own. */
export function openOwnPanel(
  { extensionUri }: vscode.ExtensionContext,
  page: PageName,
  column: vscode.ViewColumn,
): vscode.WebviewPanel {
  const media = vscode.Uri.joinPath(extensionUri, 'dist');
  const panel = vscode.window.createWebviewPanel(`propsoff.${page.name}`, page.title, column, {
    enableScripts: true,
    localResourceRoots: [media],
    retainContextWhenHidden: true,
  });
  panel.webview.html = ownPage(panel.webview, media, randomBytes(16).toString('hex'), page);
  return panel;
}
