import type * as vscode from 'vscode';
import type { AboutPlace, AboutScript } from '../../server/src/lsp/own-message';

/** What a request about a script is asked with. */
export function about(uri: vscode.Uri): AboutScript {
  return { textDocument: { uri: uri.toString() } };
}

/** The same for a place in it. */
export function aboutPlace(uri: vscode.Uri, { line, character }: vscode.Position): AboutPlace {
  return { ...about(uri), position: { line, character } };
}
