import * as vscode from 'vscode';
import type { Client } from './client';

const { t } = vscode.l10n;

/** Why there is no answer: `empty`, which is what the server says by none; or that there is no server to ask. */
export function whyNoAnswer(client: Client, empty: string): string {
  return client.state === 'running' ? empty : t('Propsoff’s checks are not running.');
}
