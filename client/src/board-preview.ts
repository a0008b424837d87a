import * as vscode from 'vscode';
import { boardTextRequest } from '../../server/src/lsp/board-protocol';
import { about } from './about';
import type { Client } from './client';
import { activeCraftScript } from './language';
import { whyNoAnswer } from './no-answer';

const { t } = vscode.l10n;

const scheme = 'propsoff-board';

/** The board's text of a craft script, read-only beside it: it follows every edit. */
export class BoardPreview implements vscode.TextDocumentContentProvider, vscode.Disposable {
  private readonly changed = new vscode.EventEmitter<vscode.Uri>();
  readonly onDidChange = this.changed.event;
  /** By script. */
  private readonly shown = new Map<string, vscode.Uri>();
  private readonly disposables: vscode.Disposable[];

  constructor(private readonly client: Client) {
    this.disposables = [
      this.changed,
      vscode.workspace.registerTextDocumentContentProvider(scheme, this),
      client.onChecked((script) => {
        const preview = this.shown.get(script.toString());
        if (preview !== undefined) this.changed.fire(preview);
      }),
      vscode.workspace.onDidCloseTextDocument(({ uri }) => {
        if (uri.scheme === scheme) this.shown.delete(uri.query);
      }),
    ];
  }

  async open(): Promise<void> {
    const script = activeCraftScript()?.document.uri;
    if (script === undefined) {
      void vscode.window.showInformationMessage(t('Open a craft script first.'));
      return;
    }
    const path = `${script.path.replace(/\.craft$/, '')}.boardtext`;
    const uri = vscode.Uri.from({ scheme, path, query: script.toString() });
    this.shown.set(script.toString(), uri);
    this.changed.fire(uri);
    const document = await vscode.workspace.openTextDocument(uri);
    await vscode.window.showTextDocument(document, {
      viewColumn: vscode.ViewColumn.Beside,
      preserveFocus: true,
      preview: true,
    });
  }

  async provideTextDocumentContent(uri: vscode.Uri): Promise<string> {
    const options = { board: null, since: null, reason: null, isPreview: true };
    const answer = await this.client.request(boardTextRequest, {
      ...about(vscode.Uri.parse(uri.query)),
      ...options,
    });
    if (answer?.kind === 'text') return answer.pieces.join('');
    if (answer?.kind === 'no-board')
      return `${answer.message} ${t('Name it in the script:')}\n\n[board]\nprofile = ${answer.boards[0]?.name ?? 'wren'}\n`;
    return `${whyNoAnswer(this.client, t('The craft script is not open any more.'))}\n`;
  }

  dispose(): void {
    for (const disposable of this.disposables) disposable.dispose();
  }
}
