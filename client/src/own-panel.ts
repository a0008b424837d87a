import * as vscode from 'vscode';
import { newNonce } from './nonce';
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
  panel.webview.html = ownPage(panel.webview, media, newNonce(), page);
  return panel;
}
