import * as vscode from 'vscode';
import { linesToWriteRequest } from '../../server/src/lsp/values-protocol';
import { about } from './about';
import { applyEdits } from './apply-edits';
import type { Client } from './client';
import { goTo } from './go-to';

const { t } = vscode.l10n;

/** Writes lines to be filled in as one edit that can be undone, and puts the cursor where the first value goes. */
export async function writeLines(client: Client, uri: vscode.Uri, paths: readonly string[]): Promise<void> {
  const answer = await client.request(linesToWriteRequest, { ...about(uri), paths });
  const refusal = answer === null ? t('the script is not open any more') : await applyEdits(uri, answer);
  if (answer === null || refusal !== null) {
    void vscode.window.showWarningMessage(
      t('The lines were not written: {reason}.', { reason: refusal ?? '' }),
    );
    return;
  }
  const { line, character } = answer.at;
  await goTo({ uri: uri.toString(), line, character }, vscode.ViewColumn.One);
}
