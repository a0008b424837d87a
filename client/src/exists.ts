import * as vscode from 'vscode';

/** Whether a place is taken, by whatever it may be. */
export async function exists(uri: vscode.Uri): Promise<boolean> {
  try {
    await vscode.workspace.fs.stat(uri);
    return true;
  } catch {
    return false;
  }
}
