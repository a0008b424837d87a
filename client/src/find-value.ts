import * as vscode from 'vscode';
import { summaryRequest } from '../../server/src/lsp/protocol';
import { type FindResult, findRequest } from '../../server/src/lsp/values-protocol';
import type { FindChoices, FromFind, ToFind } from '../find/messages';
import { about } from './about';
import { applyEdits } from './apply-edits';
import type { Client } from './client';
import { nameOf } from './file-name';
import { activeCraftScript } from './language';
import { openOwnPanel, PagesOfFiles } from './own-page';
import { writeLines } from './write-lines';

const { t } = vscode.l10n;

const pages = new PagesOfFiles();

/** Opens the page that answers what to set in a craft script: the active one, or that of the build sheet. */
export function findValue(context: vscode.ExtensionContext, client: Client, given?: vscode.Uri): void {
  const uri = given ?? activeCraftScript()?.document.uri;
  if (uri === undefined) {
    void vscode.window.showInformationMessage(t('Open a craft script first: values are found for a craft.'));
    return;
  }
  if (pages.showAgain(uri)) return;
  const page = { name: 'find', title: t('Find a Value') } as const;
  const panel = openOwnPanel(context, page, vscode.ViewColumn.Beside);
  const finding = new ValueSearch(client, uri, (message) => void panel.webview.postMessage(message));
  pages.add(uri, panel);
  panel.onDidDispose(() => finding.stop());
  panel.webview.onDidReceiveMessage((message: FromFind) => finding.received(message));
}

/** One page's talk with the server: one search at a time. */
class ValueSearch {
  private search: vscode.CancellationTokenSource | null = null;
  private found: FindResult | null = null;

  constructor(
    private readonly client: Client,
    private readonly uri: vscode.Uri,
    private readonly tell: (message: ToFind) => void,
  ) {}

  stop(): void {
    this.search?.cancel();
    this.search = null;
  }

  async received(message: FromFind): Promise<void> {
    switch (message.kind) {
      case 'ready': {
        const summary = await this.client.request(summaryRequest, about(this.uri));
        this.tell({ kind: 'script', name: nameOf(this.uri), packs: summary?.packs ?? [] });
        return;
      }
      case 'find':
        return this.find(message.chosen);
      case 'stop':
        this.stop();
        this.tell({ kind: 'nothing', why: t('Stopped: nothing was written.') });
        return;
      case 'write-lines':
        return writeLines(this.client, this.uri, message.paths);
      case 'write':
        return this.write(message.id);
    }
  }

  private async find(chosen: FindChoices): Promise<void> {
    this.stop();
    const search = new vscode.CancellationTokenSource();
    this.search = search;
    const answer = await this.client.request(findRequest, { ...about(this.uri), ...chosen }, search.token);
    // One that was stopped, or that another took the place of, is of no use.
    if (this.search !== search) return;
    this.search = null;
    this.found = answer?.kind === 'found' ? answer : null;
    if (answer === null)
      this.tell({ kind: 'nothing', why: t('Nothing was found: the script is not open any more.') });
    else this.tell(answer.kind === 'found' ? { kind: 'found', found: answer } : answer);
  }

  /** As one edit that can be undone. */
  private async write(id: string): Promise<void> {
    const proposal = this.found?.proposals.find((one) => one.id === id);
    if (this.found === null || proposal === undefined) return;
    const { version } = this.found;
    const refusal = await applyEdits(this.uri, { version, edits: proposal.edits });
    if (refusal === null) this.tell({ kind: 'written', title: proposal.title });
    else
      void vscode.window.showWarningMessage(
        t('The values were not written: {reason}. Find them again.', { reason: refusal }),
      );
  }
}
