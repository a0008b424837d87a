import * as vscode from 'vscode';
import type { Target } from '../../server/src/sheet/target';

/** Leads from a figure or a finding to its line. */
export async function goTo({ uri, line, character }: Target, column?: vscode.ViewColumn): Promise<void> {
  const position = new vscode.Position(line, character);
  const document = await vscode.workspace.openTextDocument(vscode.Uri.parse(uri));
  const selection = new vscode.Range(position, position);
  const viewColumn = column ?? vscode.ViewColumn.Active;
  await vscode.window.showTextDocument(document, { selection, preview: false, viewColumn });
}
