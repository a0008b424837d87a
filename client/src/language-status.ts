import * as vscode from 'vscode';
import type { Client } from './client';
import { boardLanguageId, languageId } from './language';

const { t } = vscode.l10n;

/** Whether the checks run, beside the language of a script in the status bar, with a press that starts them anew. */
export class LanguageStatus implements vscode.Disposable {
  private readonly item = vscode.languages.createLanguageStatusItem('propsoff.checks', [
    { language: languageId },
    { language: boardLanguageId },
  ]);
  private readonly listening: vscode.Disposable;

  constructor(private readonly client: Client) {
    this.item.name = t('Propsoff: Checks');
    this.item.command = { command: 'propsoff.startChecks', title: t('Start Again') };
    this.listening = client.onStateChanged(() => this.show());
    this.show();
  }

  dispose(): void {
    this.listening.dispose();
    this.item.dispose();
  }

  private show(): void {
    const { state } = this.client;
    this.item.busy = state === 'starting';
    this.item.severity =
      state === 'stopped' ? vscode.LanguageStatusSeverity.Error : vscode.LanguageStatusSeverity.Information;
    this.item.text = textOf(state);
    this.item.detail = t('The log “Propsoff” says more.');
  }
}

function textOf(state: Client['state']): string {
  if (state === 'running') return t('Checks are running');
  return state === 'starting' ? t('Checks are starting') : t('Checks have stopped');
}
