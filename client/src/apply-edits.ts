import * as vscode from 'vscode';
import type { TryAnswer } from '../../server/src/lsp/values-protocol';

/** Edits of a script with the version of the text that they were made for. */
export type ScriptEdits = Pick<TryAnswer, 'version' | 'edits'>;

/** Changes a script in one step that can be undone. Null when it is done; else why not. */
export async function applyEdits(uri: vscode.Uri, { version, edits }: ScriptEdits): Promise<string | null> {
  const document = await vscode.workspace.openTextDocument(uri);
  if (document.version !== version)
    return vscode.l10n.t('the script was changed at the same moment; try again');
  const edit = new vscode.WorkspaceEdit();
  for (const { range, newText } of edits) {
    const { start, end } = range;
    edit.replace(uri, new vscode.Range(start.line, start.character, end.line, end.character), newText);
  }
  return (await vscode.workspace.applyEdit(edit))
    ? null
    : vscode.l10n.t('the editor refused the change, as for a file that may only be read');
}
