import * as vscode from 'vscode';

export const languageId = 'craft-script';
/** A board's own text. */
export const boardLanguageId = 'board-text';

/**
 * What is checked: scripts that are files, or are to become files. Texts that other extensions only show, such
 * as the earlier side of a difference, are not. Folders may lie in other file systems than the disk.
 */
export function servedDocuments(): { readonly scheme: string; readonly language: string }[] {
  const folders = vscode.workspace.workspaceFolders ?? [];
  const schemes = new Set(['file', 'untitled', 'vscode-remote', ...folders.map(({ uri }) => uri.scheme)]);
  return [...schemes].flatMap((scheme) =>
    [languageId, boardLanguageId].map((language) => ({ scheme, language })),
  );
}

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
