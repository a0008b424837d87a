import * as vscode from 'vscode';
import { boardOfNotification } from '../../server/src/lsp/board-protocol';
import { changeBeside } from './accept-beside';
import type { Client } from './client';

/** Tells the checks which board a text is of, and keeps it beside the text. False where that failed, and was said. */
export async function chooseBoard(client: Client, text: vscode.Uri, board: string): Promise<boolean> {
  await client.notify(boardOfNotification, { uri: text.toString(), board });
  return keepChoice(client, text, board);
}

/** Keeps beside a board's text which board it is of. False where that failed, and was said. */
export async function keepChoice(client: Client, text: vscode.Uri, board: string): Promise<boolean> {
  if (text.scheme === 'untitled' || !vscode.workspace.isTrusted) return true;
  return changeBeside(client, text, { board, withdraw: null, accept: null });
}

/** What is kept beside a text of whose it is; null where nothing is. */
export async function chosenFor(text: vscode.Uri): Promise<string | null> {
  try {
    const file = text.with({ path: `${text.path}.board.json` });
    const bytes = await vscode.workspace.fs.readFile(file);
    const choice: unknown = JSON.parse(new TextDecoder().decode(bytes));
    const board: unknown =
      typeof choice === 'object' && choice !== null ? Reflect.get(choice, 'board') : null;
    return typeof board === 'string' ? board : null;
  } catch {
    return null;
  }
}
