import * as vscode from 'vscode';

/** Which page: the name of its script and style in `dist/`, and its title. */
export interface PageName {
  readonly name: 'sheet' | 'learn' | 'compare' | 'card' | 'find' | 'recording';
  readonly title: string;
}

/** A page of ours: nothing but our own script and style may run or load in it. */
export function ownPage(
  webview: vscode.Webview,
  media: vscode.Uri,
  nonce: string,
  { name, title }: PageName,
): string {
  const script = webview.asWebviewUri(vscode.Uri.joinPath(media, `${name}.js`)).toString();
  const style = webview.asWebviewUri(vscode.Uri.joinPath(media, `${name}.css`)).toString();
  const policy = `default-src 'none'; style-src ${webview.cspSource}; script-src 'nonce-${nonce}'`;
  return `<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="${policy}">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>${title}</title>
<link rel="stylesheet" href="${style}">
</head>
<body>
<main id="${name}" aria-label="${title}"></main>
<div id="live" role="status" aria-live="polite"></div>
<script nonce="${nonce}" src="${script}"></script>
</body>
</html>`;
}

/** A word that nobody can guess: only the script that bears it runs in a page of ours. */
export function newNonce(): string {
  const bytes = crypto.getRandomValues(new Uint8Array(16));
  return Array.from(bytes, (byte) => byte.toString(16).padStart(2, '0')).join('');
}

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

/** Pages that are open, one for each file that they are about. */
export class PagesOfFiles {
  private readonly panels = new Map<string, vscode.WebviewPanel>();

  /** Shows a file's page again; false where none is open. */
  showAgain(uri: vscode.Uri): boolean {
    const panel = this.panels.get(uri.toString());
    panel?.reveal();
    return panel !== undefined;
  }

  add(uri: vscode.Uri, panel: vscode.WebviewPanel): void {
    const key = uri.toString();
    this.panels.set(key, panel);
    panel.onDidDispose(() => this.panels.delete(key));
  }
}
