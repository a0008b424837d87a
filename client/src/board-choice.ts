import * as vscode from 'vscode';
import { written } from './written';

/** Keeps beside a board's text which board it is of. False where that failed, and was said. */
export async function keepChoice(text: vscode.Uri, board: string): Promise<boolean> {
  if (text.scheme === 'untitled' || !vscode.workspace.isTrusted) return true;
  const choice = `${JSON.stringify({ version: 1, board })}\n`;
  return written(text.with({ path: `${text.path}.board.json` }), choice);
}
