import * as vscode from 'vscode';
import { chosenFor } from './board-choice';
import { nameOf, withoutEnding } from './file-name';

/** So many files are looked through for what belongs to a board. */
const mostFiles = 500;

/** A profile of the workspace that can be edited. */
export interface ProfileToEdit {
  readonly board: string;
  readonly uri: vscode.Uri;
}

/** The profiles of the workspace, by name. */
export async function profilesToEdit(): Promise<readonly ProfileToEdit[]> {
  const files = await vscode.workspace.findFiles('**/boards/*.json', '**/node_modules/**', mostFiles);
  return files
    .map((uri) => ({ uri, board: withoutEnding(nameOf(uri)) }))
    .sort((one, other) => one.board.localeCompare(other.board));
}

/** A text of a board: one that has its name, or beside which it is said whose it is; null without one. */
export async function textOfBoard(board: string): Promise<vscode.Uri | null> {
  const texts = await vscode.workspace.findFiles('**/*.boardtext', '**/node_modules/**', mostFiles);
  for (const uri of texts) if ((await chosenFor(uri)) === board) return uri;
  return texts.find((uri) => withoutEnding(nameOf(uri)).toLowerCase() === board) ?? null;
}
