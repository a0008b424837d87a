import * as vscode from 'vscode';
import { type AcceptanceChange, type KeepParams, keepRequest } from '../../server/src/lsp/board-protocol';
import { writtenRequest } from '../../server/src/lsp/files-protocol';
import type { Client } from './client';
import { written } from './written';

const { t } = vscode.l10n;

/** Accepts a risk of a board's text beside it, with the pilot's reason, or takes that back. */
export async function acceptBeside(client: Client, uri: string, change: AcceptanceChange): Promise<void> {
  if (!vscode.workspace.isTrusted) {
    void vscode.window.showWarningMessage(
      t('This workspace is not trusted: nothing is written beside the text.'),
    );
    return;
  }
  const accept = change.accept === null ? null : await withReason(change.accept);
  if (accept === undefined) return;
  await changeBeside(client, vscode.Uri.parse(uri), { ...change, board: null, accept });
}

type FindingToAccept = NonNullable<AcceptanceChange['accept']>;

/** Undefined: the pilot has left. */
async function withReason(accept: FindingToAccept): Promise<FindingToAccept | undefined> {
  if (accept.reason !== '') return accept;
  const { groups, name } = accept.setting;
  const reason = await vscode.window.showInputBox({
    title: t('Accept a Finding on {setting}', { setting: [...groups, name].join(' ') }),
    prompt: t('Why is it fine here? The reason is kept in a file beside the text.'),
    validateInput: (said) => (said.trim() === '' ? t('A reason in words is needed.') : undefined),
    ignoreFocusOut: true,
  });
  return reason === undefined ? undefined : { ...accept, reason: reason.trim() };
}

/** Changes what is kept beside a board's text. False where that failed, and was said. */
export async function changeBeside(
  client: Client,
  text: vscode.Uri,
  change: KeepParams['change'],
): Promise<boolean> {
  const answer = await client.request(keepRequest, { uri: text.toString(), change });
  if (answer?.kind !== 'file') {
    void vscode.window.showErrorMessage(answer?.message ?? t('Propsoff’s checks are not running.'));
    return false;
  }
  const file = vscode.Uri.parse(answer.uri);
  if (!(await written(file, answer.text))) return false;
  await client.request(writtenRequest, { uri: file.toString() });
  return true;
}
