import * as vscode from 'vscode';
import { writtenRequest } from '../../server/src/lsp/protocol';
import type { Client } from './client';
import { written } from './written';

/** Where the profile of a board is kept whose text is a file: in the workspace that holds it, else beside it. */
export function profileFile(text: vscode.Uri, board: string): vscode.Uri {
  const folder = vscode.workspace.getWorkspaceFolder(text)?.uri ?? vscode.Uri.joinPath(text, '..');
  return vscode.Uri.joinPath(folder, 'boards', `${board}.json`);
}

/** Writes a profile and tells the checks so: outside of a workspace nobody watches its folder. */
export async function writtenProfile(client: Client, file: vscode.Uri, profile: string): Promise<boolean> {
  if (!vscode.workspace.isTrusted || !(await written(file, profile))) return false;
  await client.request(writtenRequest, { uri: file.toString() });
  return true;
}
