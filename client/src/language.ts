import * as vscode from 'vscode';

export const languageId = 'craft-script';

/** The craft script that the pilot is working on, if it is one. */
export function activeScript(): vscode.TextEditor | undefined {
  const editor = vscode.window.activeTextEditor;
  return editor?.document.languageId === languageId ? editor : undefined;
}
