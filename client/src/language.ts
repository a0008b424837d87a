import * as vscode from 'vscode';

export const languageId = 'craft-script';
/** A board's own text. */
export const boardLanguageId = 'board-text';

/** The craft that the pilot is working on, as a script or in its board's text, if it is one. */
export function activeScript(): vscode.TextEditor | undefined {
  const editor = vscode.window.activeTextEditor;
  const id = editor?.document.languageId;
  return id === languageId || id === boardLanguageId ? editor : undefined;
}

/** The craft script that the pilot is working on; not a board's text. */
export function activeCraftScript(): vscode.TextEditor | undefined {
  const editor = vscode.window.activeTextEditor;
  return editor?.document.languageId === languageId ? editor : undefined;
}
