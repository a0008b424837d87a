import * as vscode from 'vscode';
import { nameOf } from './file-name';

/** Writes a file that the pilot asked for; false, and said, where that fails. */
export async function written(uri: vscode.Uri, text: string): Promise<boolean> {
  try {
    await vscode.workspace.fs.writeFile(uri, new TextEncoder().encode(text));
    return true;
  } catch (error) {
    const name = nameOf(uri);
    const reason = error instanceof Error ? error.message : String(error);
    void vscode.window.showErrorMessage(
      vscode.l10n.t('{name} could not be written: {reason}', { name, reason }),
    );
    return false;
  }
}
