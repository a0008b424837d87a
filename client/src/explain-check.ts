import * as vscode from 'vscode';
import { explainCheckRequest } from '../../server/src/lsp/protocol';
import type { Client } from './client';
import type { Explanations } from './explanations';
import { whyNoAnswer } from './no-answer';

const { t } = vscode.l10n;

/** Opens the whole story of a check beside the script: each finding's id leads here. */
export async function explainCheck(
  client: Client,
  explanations: Explanations,
  check: unknown,
): Promise<void> {
  if (typeof check !== 'string') return;
  const story = await client.request(explainCheckRequest, { check });
  if (story === null) {
    void vscode.window.showInformationMessage(
      whyNoAnswer(client, t('The check {check} is not known here any more.', { check })),
    );
    return;
  }
  await explanations.show(t('the check {check}', { check: check.replace('/', ': ') }), story);
}
