import * as vscode from 'vscode';

export const languageId = 'craft-script';
/** A board's own text. */
export const boardLanguageId = 'board-text';

/** Kinds of URI of texts that are files, or are to become files. Folders may lie elsewhere than on the disk. */
export function fileSchemes(): ReadonlySet<string> {
  const folders = vscode.workspace.workspaceFolders ?? [];
  return new Set(['file', 'untitled', 'vscode-remote', ...folders.map(({ uri }) => uri.scheme)]);
}

/** What is checked. Texts that other extensions only show, such as the earlier side of a difference, are not. */
export function servedDocuments(): { readonly scheme: string; readonly language: string }[] {
  return [...fileSchemes()].flatMap((scheme) =>
    [languageId, boardLanguageId].map((language) => ({ scheme, language })),
  );
}

/** The craft that the pilot is working on, as a script or in its board's text, if it is one. */
export function activeScript(): vscode.TextEditor | undefined {
  return activeEditorOf(languageId, boardLanguageId);
}

/** The craft script that the pilot is working on; not a board's text. */
export function activeCraftScript(): vscode.TextEditor | undefined {
  return activeEditorOf(languageId);
}

/** While a page such as the walkthrough or the bench card has the focus, the script that is seen beside it. */
function activeEditorOf(...ids: readonly string[]): vscode.TextEditor | undefined {
  const { activeTextEditor: active, visibleTextEditors: visible } = vscode.window;
  const editors = active === undefined ? visible : [active];
  return editors.find(({ document }) => ids.includes(document.languageId));
}
