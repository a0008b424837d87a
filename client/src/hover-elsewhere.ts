import * as vscode from 'vscode';
import { hoverElsewhereRequest } from '../../server/src/lsp/protocol';
import type { Client } from './client';
import { fileSchemes, languageId } from './language';

/** Hovers over scripts that are only shown, such as the earlier side of a difference; they are not checked. */
export function hoverElsewhere(client: Client): vscode.Disposable {
  return vscode.languages.registerHoverProvider(languageId, {
    provideHover: async (document, position) => {
      if (fileSchemes().has(document.uri.scheme)) return undefined; // the server knows it
      const hover = await client.request(hoverElsewhereRequest, {
        uri: placeOf(document.uri).toString(),
        text: document.getText(),
        position: { line: position.line, character: position.character },
      });
      if (hover === null) return undefined;
      const { start, end } = hover.range;
      const range = new vscode.Range(start.line, start.character, end.line, end.character);
      return new vscode.Hover(new vscode.MarkdownString(hover.markdown), range);
    },
  });
}

/** The file that a text is an earlier state of, where one of the workspace's folders holds its path. */
function placeOf(shown: vscode.Uri): vscode.Uri {
  const folder = vscode.workspace.workspaceFolders?.find(({ uri }) => shown.path.startsWith(`${uri.path}/`));
  return folder === undefined ? shown : folder.uri.with({ path: shown.path });
}
