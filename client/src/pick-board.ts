import * as vscode from 'vscode';
import { type BoardChoice, boardsRequest } from '../../server/src/lsp/board-protocol';
import { chooseBoard } from './board-choice';
import type { Client } from './client';
import { boardLanguageId } from './language';

const { t } = vscode.l10n;

/** Lets the pilot say which board; undefined when they leave it. `why`: what made it necessary. */
export async function pickBoard(boards: readonly BoardChoice[], why: string): Promise<string | undefined> {
  if (boards.length === 0) {
    void vscode.window.showWarningMessage(
      `${why} ${t('No profile says how a board writes its settings yet.')}`,
    );
    return undefined;
  }
  const items = boards.map(({ name, title }) => ({ label: title, description: name, name }));
  const picked = await vscode.window.showQuickPick(items, { title: t('Which board?'), placeHolder: why });
  return picked?.name;
}

/** Says whose text the active document is; any text becomes a board's text by it. */
export async function pickBoardOfText(client: Client): Promise<void> {
  const document = vscode.window.activeTextEditor?.document;
  if (document === undefined) {
    void vscode.window.showInformationMessage(t('First open a text captured from a board.'));
    return;
  }
  const boards = await client.request(boardsRequest, {});
  if (boards === null) {
    void vscode.window.showErrorMessage(t('Propsoff’s checks are not running.'));
    return;
  }
  const board = await pickBoard(boards, t('The board that this text comes from'));
  if (board === undefined) return;
  const text =
    document.languageId === boardLanguageId
      ? document
      : await vscode.languages.setTextDocumentLanguage(document, boardLanguageId);
  await chooseBoard(client, text.uri, board);
}
