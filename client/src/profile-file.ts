import * as vscode from 'vscode';
import { writtenRequest } from '../../server/src/lsp/files-protocol';
import type { Client } from './client';
import { exists } from './exists';
import { written } from './written';

/** Where the profile of a board is kept whose text is a file: in the workspace that holds it, else beside it. */
export function profileFile(text: vscode.Uri, board: string): vscode.Uri {
  const folder = vscode.workspace.getWorkspaceFolder(text)?.uri ?? vscode.Uri.joinPath(text, '..');
  return profileIn(folder, board);
}

/** The same in a folder. */
export function profileIn(folder: vscode.Uri, board: string): vscode.Uri {
  return vscode.Uri.joinPath(folder, 'boards', `${board}.json`);
}

/** The text of a profile that is plain JSON; null where there is none, or it is not. */
export async function plainProfile(file: vscode.Uri): Promise<string | null> {
  if (!(await exists(file))) return null;
  const text = new TextDecoder().decode(await vscode.workspace.fs.readFile(file));
  try {
    JSON.parse(text);
    return text;
  } catch {
    return null;
  }
}

/** Why a profile that is no plain JSON stays as it is. */
export function unchangeable(board: string): string {
  return vscode.l10n.t(
    'The profile {board} can’t be changed here: it is built in, or holds comments that would be lost.',
    { board },
  );
}

/**
 * Writes a profile and tells the checks so: outside of a workspace nobody watches its folder. `before`: what stood
 * there.
 */
export async function writtenProfile(
  client: Client,
  file: vscode.Uri,
  profile: string,
  before = '',
): Promise<boolean> {
  if (!vscode.workspace.isTrusted || !(await written(file, withSchema(profile, before)))) return false;
  await client.request(writtenRequest, { uri: file.toString() });
  return true;
}

/** A profile may name the schema that an editor holds it against: it stays. */
function withSchema(profile: string, before: string): string {
  const line = before.split(/\r?\n/).find((one) => /^\s*"\$schema": *"[^"]*",$/.test(one));
  return line === undefined ? profile : profile.replace('{\n', `{\n${line}\n`);
}
