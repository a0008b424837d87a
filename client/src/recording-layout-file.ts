import * as vscode from 'vscode';
import { exists } from './exists';
import { nameOf } from './file-name';
import { written } from './written';

const { t } = vscode.l10n;

/**
 * Keeps what was confirmed about the columns of a logger, under a name that the pilot gives it, in the folder of the
 * workspace that holds the recording, else beside it. Gives the name; null where it is not kept: the pilot has been
 * told, or left.
 */
export async function keepLayout(
  recording: vscode.Uri,
  text: string,
  keptAs: string | null,
): Promise<string | null> {
  if (!vscode.workspace.isTrusted) {
    void vscode.window.showWarningMessage(t('This workspace is not trusted: no file is written from it.'));
    return null;
  }
  const around = vscode.workspace.getWorkspaceFolder(recording)?.uri ?? vscode.Uri.joinPath(recording, '..');
  const folder = vscode.Uri.joinPath(around, 'recordings');
  const name = await vscode.window.showInputBox({
    title: t('What Is This Logger Called?'),
    prompt: t('Its columns are known from then on. They are kept in recordings/<name>.json.'),
    value: keptAs ?? (await freeName(folder)),
    validateInput: (typed) =>
      /^[\p{L}\p{N}][\p{L}\p{N} _-]{0,60}$/u.test(typed.trim())
        ? null
        : t('A name of letters, digits, blanks and dashes is wanted.'),
  });
  if (name === undefined) return null;
  const file = vscode.Uri.joinPath(folder, `${name.trim()}.json`);
  const isKept = await written(file, text);
  if (isKept) void vscode.window.setStatusBarMessage(t('Kept in {name}', { name: nameOf(file) }), 5000);
  return isKept ? name.trim() : null;
}

async function freeName(folder: vscode.Uri): Promise<string> {
  for (let number = 1; ; number += 1) {
    const name = number === 1 ? 'logger' : `logger-${number}`;
    if (!(await exists(vscode.Uri.joinPath(folder, `${name}.json`)))) return name;
  }
}
