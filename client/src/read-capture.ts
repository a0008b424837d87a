import * as vscode from 'vscode';
import { readRequest } from '../../server/src/lsp/board-protocol';
import { pickCapture } from './captures';
import type { Client } from './client';
import { languageId } from './language';
import { pickBoard } from './pick-board';

const { t } = vscode.l10n;

/** Makes a craft script of a captured text and opens it, saved nowhere yet. */
export async function makeCraftScript(client: Client): Promise<void> {
  const capture = await pickCapture(t('Make Craft Script from Captured Text'));
  if (capture === undefined) return;
  const of = { capture: capture.text, uri: capture.uri?.toString() ?? null };
  let answer = await client.request(readRequest, { ...of, board: null });
  if (answer?.kind === 'no-board') {
    const board = await pickBoard(answer.boards, t('No profile knows this text for sure.'));
    if (board === undefined) return;
    answer = await client.request(readRequest, { ...of, board });
  }
  if (answer === null || answer.kind === 'no-board') {
    void vscode.window.showErrorMessage(answer?.message ?? t('Propsoff’s checks are not running.'));
    return;
  }
  const document = await vscode.workspace.openTextDocument({ language: languageId, content: answer.text });
  await vscode.window.showTextDocument(document);
  const [counts = '', ...rest] = answer.summary;
  for (const line of answer.summary) client.log.info(line.trim());
  const more = rest.length === 0 ? [] : [t('Show What Was Kept')];
  const picked = await vscode.window.showInformationMessage(`${answer.board.title}: ${counts}`, ...more);
  if (picked !== undefined) client.log.show();
}
