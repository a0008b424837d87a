import * as vscode from 'vscode';
import { type NewBoardText, newBoardTextRequest } from '../../server/src/lsp/board-protocol';
import { keepChoice } from './board-choice';
import type { Client } from './client';
import { exists } from './exists';
import { nameOf, withoutEnding } from './file-name';
import { includeInScript } from './include-in-script';
import { boardLanguageId } from './language';
import { whyNoAnswer } from './no-answer';
import { profileFile, writtenProfile } from './profile-file';
import { written } from './written';

const { t } = vscode.l10n;

const ending = '.boardtext';

/**
 * Makes the active text, or what is selected of it, a board's text: saved, with a profile, and nothing asked. `file`:
 * one that was picked in the explorer.
 */
export async function useAsBoardText(client: Client, file?: vscode.Uri): Promise<void> {
  const editor =
    file instanceof vscode.Uri ? await vscode.window.showTextDocument(file) : vscode.window.activeTextEditor;
  if (editor === undefined) {
    void vscode.window.showInformationMessage(t('First open a text captured from a board.'));
    return;
  }
  const { document, selection } = editor;
  const text = selection.isEmpty ? document.getText() : document.getText(selection);
  const place = await placeFor(document, selection.isEmpty);
  const fileName = nameOf(place ?? document.uri);
  const found = await client.request(newBoardTextRequest, { text, fileName });
  if (found === null) {
    void vscode.window.showWarningMessage(
      whyNoAnswer(client, t('No line of this text looks like a setting.')),
    );
    return;
  }
  const shown = await shownAsBoardText(client, document, text, place, found);
  if (shown !== null) await offer(shown, found);
}

/** Where the text is to be: where it is, if it is a board's text; else beside it under a free name; null: nowhere. */
async function placeFor(document: vscode.TextDocument, isWhole: boolean): Promise<vscode.Uri | null> {
  const { uri, isUntitled } = document;
  if (!vscode.workspace.isTrusted) return null;
  if (isWhole && !isUntitled && uri.path.endsWith(ending)) return uri;
  const [workspace] = vscode.workspace.workspaceFolders ?? [];
  const folder = isUntitled ? workspace?.uri : vscode.Uri.joinPath(uri, '..');
  if (folder === undefined) return null;
  const base = isUntitled ? 'board' : withoutEnding(nameOf(uri));
  for (let number = 1; ; number += 1) {
    const name = number === 1 ? base : `${base}-${number}`;
    const place = vscode.Uri.joinPath(folder, name + ending);
    if (!(await exists(place))) return place;
  }
}

/** Writes what is to be written and opens the text; null where that failed, and was said. */
async function shownAsBoardText(
  client: Client,
  before: vscode.TextDocument,
  text: string,
  place: vscode.Uri | null,
  found: NewBoardText,
): Promise<vscode.Uri | null> {
  const isThere = place?.toString() === before.uri.toString();
  if (place !== null && !(await writtenBeside(client, place, isThere ? null : text, found))) return null;
  if (place === null || isThere) {
    if (before.languageId !== boardLanguageId)
      await vscode.languages.setTextDocumentLanguage(before, boardLanguageId);
    return before.uri;
  }
  // All that a new document holds is in its file now.
  if (before.isUntitled && before.getText() === text)
    await vscode.commands.executeCommand('workbench.action.revertAndCloseActiveEditor');
  const document = await vscode.workspace.openTextDocument(place);
  await vscode.window.showTextDocument(document, { preview: false });
  if (document.languageId !== boardLanguageId)
    await vscode.languages.setTextDocumentLanguage(document, boardLanguageId);
  return place;
}

/** The text, its profile in the folder for boards, and which board it is of where its name does not say so. */
async function writtenBeside(
  client: Client,
  place: vscode.Uri,
  text: string | null,
  { board, profile, isByName }: NewBoardText,
): Promise<boolean> {
  if (profile !== null && !(await writtenProfile(client, profileFile(place, board), profile))) return false;
  if (!isByName && !(await keepChoice(client, place, board))) return false;
  return text === null || (await written(place, text));
}

async function offer(uri: vscode.Uri, { settings, groups, left }: NewBoardText): Promise<void> {
  const counts =
    groups === 1
      ? t('{settings} settings in one group were found', { settings })
      : t('{settings} settings in {groups} groups were found', { settings, groups });
  const said =
    left === 0
      ? t('{counts}; every line was understood.', { counts })
      : left === 1
        ? t('{counts}; one line was not understood.', { counts })
        : t('{counts}; {left} lines were not understood.', { counts, left });
  const copy = t('Copy for the Board');
  const include = t('Include in a Craft Script');
  const picked = await vscode.window.showInformationMessage(said, copy, include);
  if (picked === copy) await vscode.commands.executeCommand('propsoff.copyForBoard');
  if (picked === include) await includeInScript(uri);
}
