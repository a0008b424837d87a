import * as vscode from 'vscode';
import { type BoardLesson, type TeachAnswer, teachRequest } from '../../server/src/lsp/protocol';
import { about } from './about';
import { chooseBoard } from './board-choice';
import type { Client } from './client';
import { exists } from './exists';
import { profileFile, writtenProfile } from './profile-file';

const { t } = vscode.l10n;

type Taught = Extract<TeachAnswer, { kind: 'taught' }>;

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

async function keep(client: Client, { board, profile, isNew, isByName, text }: Taught): Promise<boolean> {
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
    void vscode.window.showWarningMessage(
      t('The profile {board} can’t be changed here: it is built in, or holds comments that would be lost.', {
        board,
      }),
    );
    return false;
  }
  if (!(await writtenProfile(client, file, withSchema(profile, before)))) return false;
  if (!isNew || isByName) return true;
  return chooseBoard(client, place, board);
}

/** The text of a profile that is plain JSON; null where there is none, or it is not. */
export async function plainProfile(file: vscode.Uri): Promise<string | null> {
  if (!(await exists(file))) return null;
  const text = new TextDecoder().decode(await vscode.workspace.fs.readFile(file));
  try {
    JSON.parse(text);
    return text;
  } catch {
    return null;
  }
}

/** A profile may name the schema that an editor holds it against: it stays. */
export function withSchema(profile: string, before: string): string {
  const line = before.split(/\r?\n/).find((one) => /^\s*"\$schema": *"[^"]*",$/.test(one));
  return line === undefined ? profile : profile.replace('{\n', `{\n${line}\n`);
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
