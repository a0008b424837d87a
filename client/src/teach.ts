import * as vscode from 'vscode';
import { type BoardLesson, type TeachAnswer, teachRequest } from '../../server/src/lsp/learn-protocol';
import { about } from './about';
import { chooseBoard } from './board-choice';
import type { Client } from './client';
import { plainProfile, profileFile, unchangeable, writtenProfile } from './profile-file';

const { t } = vscode.l10n;

type TaughtAnswer = Extract<TeachAnswer, { kind: 'taught' }>;

/** Has the profile of a text's board say what a pilot says of it; false where nothing came of it, and that was said. */
export async function teach(client: Client, script: vscode.Uri, lesson: BoardLesson): Promise<boolean> {
  const answer = await client.request(teachRequest, { ...about(script), lesson });
  if (answer === null) {
    void vscode.window.showErrorMessage(t('Propsoff’s checks are not running.'));
    return false;
  }
  if (answer.kind === 'taught') {
    const isKept = await keep(client, answer);
    if (isKept) void vscode.window.showInformationMessage(answer.said);
    return isKept;
  }
  if (!answer.asks || lesson.part !== '') {
    void vscode.window.showWarningMessage(answer.message);
    return false;
  }
  const part = await vscode.window.showInputBox({
    title: t('What Does the Line Say?'),
    prompt: answer.message,
    ignoreFocusOut: true,
  });
  return part === undefined || part === '' ? false : teach(client, script, { ...lesson, part });
}

async function keep(
  client: Client,
  { board, profile, isNew, isByName, text }: TaughtAnswer,
): Promise<boolean> {
  const place = text === null ? null : vscode.Uri.parse(text);
  if (place === null || place.scheme === 'untitled' || !vscode.workspace.isTrusted) {
    void vscode.window.showWarningMessage(
      t('What is said of a board is kept beside its text: save the text as a file first.'),
    );
    return false;
  }
  const file = profileFile(place, board);
  const before = isNew ? '' : await plainProfile(file);
  if (before === null) {
    void vscode.window.showWarningMessage(unchangeable(board));
    return false;
  }
  if (!(await writtenProfile(client, file, profile, before))) return false;
  if (!isNew || isByName) return true;
  return chooseBoard(client, place, board);
}

/** What a pilot would type to set one setting, asked for. */
export async function teachCommand(client: Client, script: vscode.Uri): Promise<boolean> {
  const part = await vscode.window.showInputBox({
    title: t('How Is the Board Told a Setting?'),
    prompt: t('Type what you would type to set one setting to the value that it has in the listing.'),
    ignoreFocusOut: true,
  });
  if (part === undefined || part.trim() === '') return false;
  return teach(client, script, { kind: 'command', line: null, part });
}
