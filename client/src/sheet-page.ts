import * as vscode from 'vscode';

/** The page of the build sheet: nothing but our own script and style may run or load in it. */
export function sheetPage(webview: vscode.Webview, media: vscode.Uri, nonce: string): string {
  const script = webview.asWebviewUri(vscode.Uri.joinPath(media, 'sheet.js')).toString();
  const style = webview.asWebviewUri(vscode.Uri.joinPath(media, 'sheet.css')).toString();
  const policy = `default-src 'none'; style-src ${webview.cspSource}; script-src 'nonce-${nonce}'`;
  return `<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="${policy}">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>Build Sheet</title>
<link rel="stylesheet" href="${style}">
</head>
<body>
<main id="sheet" aria-label="Build sheet"></main>
<div id="live" role="status" aria-live="polite"></div>
<script nonce="${nonce}" src="${script}"></script>
</body>
</html>`;
}
