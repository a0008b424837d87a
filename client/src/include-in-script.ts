import * as vscode from 'vscode';
import { craftFiles } from './craft-files';
import { exists } from './exists';
import { nameOf } from './file-name';
import { languageId } from './language';

const { t } = vscode.l10n;

interface ScriptItem extends vscode.QuickPickItem {
  /** null: one that is to be made. */
  readonly uri: vscode.Uri | null;
}

/** Has a craft script include a board's text, above all that it says itself. */
export async function includeInScript(text: vscode.Uri): Promise<void> {
  const fresh: ScriptItem = { label: `$(add) ${t('A new craft script')}`, uri: null };
  const scripts = (await craftFiles()).map((uri): ScriptItem => {
    const path = vscode.workspace.asRelativePath(uri, false);
    return { label: `$(file) ${path}`, uri };
  });
  const picked = await vscode.window.showQuickPick([fresh, ...scripts], {
    title: t('Include in a Craft Script'),
    placeHolder: t('Which script describes the craft that this board is in?'),
  });
  if (picked === undefined) return;
  if (picked.uri === null) {
    await showNew(text, vscode.Uri.joinPath(text, '..', nameOf(text).replace(/\.[^.]*$/, '.craft')));
    return;
  }
  const document = await vscode.workspace.openTextDocument(picked.uri);
  const edit = new vscode.WorkspaceEdit();
  edit.insert(picked.uri, new vscode.Position(0, 0), `${includeLine(picked.uri, text)}\n`);
  await vscode.workspace.applyEdit(edit);
  await vscode.window.showTextDocument(document);
}

/** Not saved yet: what the craft is, only the pilot knows. */
async function showNew(text: vscode.Uri, script: vscode.Uri): Promise<void> {
  const uri = (await exists(script)) ? null : script.with({ scheme: 'untitled' });
  const document =
    uri === null || text.scheme !== 'file'
      ? await vscode.workspace.openTextDocument({ language: languageId })
      : await vscode.workspace.openTextDocument(uri);
  const editor = await vscode.window.showTextDocument(document);
  await editor.edit((edit) =>
    edit.insert(new vscode.Position(0, 0), `${includeLine(script, text)}\n\n[craft]\n`),
  );
}

function includeLine(script: vscode.Uri, text: vscode.Uri): string {
  return `include "${relativePath(script.path.split('/').slice(0, -1), text.path.split('/'))}"`;
}

function relativePath(folder: readonly string[], file: readonly string[]): string {
  let shared = 0;
  while (shared < folder.length && folder[shared] === file[shared]) shared += 1;
  return [...folder.slice(shared).map(() => '..'), ...file.slice(shared)].join('/');
}
