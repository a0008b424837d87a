import * as vscode from 'vscode';
import { boardOfNotification } from '../../server/src/lsp/board-protocol';
import type { Client } from './client';
import { written } from './written';

/** Tells the checks which board a text is of, and keeps it beside the text. False where that failed, and was said. */
export async function chooseBoard(client: Client, text: vscode.Uri, board: string): Promise<boolean> {
  await client.notify(boardOfNotification, { uri: text.toString(), board });
  return keepChoice(text, board);
}

/** Keeps beside a board's text which board it is of. False where that failed, and was said. */
export async function keepChoice(text: vscode.Uri, board: string): Promise<boolean> {
  if (text.scheme === 'untitled' || !vscode.workspace.isTrusted) return true;
  return written(choiceFile(text), `${JSON.stringify({ version: 1, board })}\n`);
}

/** What is kept beside a text of whose it is; null where nothing is. */
export async function chosenFor(text: vscode.Uri): Promise<string | null> {
  try {
    const bytes = await vscode.workspace.fs.readFile(choiceFile(text));
    const choice: unknown = JSON.parse(new TextDecoder().decode(bytes));
    const board: unknown =
      typeof choice === 'object' && choice !== null ? Reflect.get(choice, 'board') : null;
    return typeof board === 'string' ? board : null;
  } catch {
    return null;
  }
}

function choiceFile(text: vscode.Uri): vscode.Uri {
  return text.with({ path: `${text.path}.board.json` });
}
