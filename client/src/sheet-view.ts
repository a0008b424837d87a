import * as vscode from 'vscode';
import {
  packInViewNotification,
  setHereRequest,
  sheetRequest,
  summaryRequest,
} from '../../server/src/lsp/protocol';
import { narrowingRequest, type SettingToTry } from '../../server/src/lsp/values-protocol';
import type { FromSheet, ToSheet } from '../sheet/messages';
import { pageState } from '../sheet/state';
import { about, aboutPlace } from './about';
import type { Client } from './client';
import { goWay, noScript, stopped } from './empty-sheet';
import { findChannels } from './find-channels';
import { findValue } from './find-value';
import { goTo } from './go-to';
import { activeScript } from './language';
import { noteFlight } from './note-flight';
import { openRecording } from './open-recording';
import { newNonce, ownPage } from './own-page';
import { WatchedRecord } from './record';
import type { RecordingsSaid } from './recordings-said';
import { SentPieces } from './sent-pieces';
import { ValueTrial } from './trial';
import { writeLines } from './write-lines';

/** Where the page's state is kept, for each folder. */
const stateKey = 'propsoff.sheet';

/**
 * The build sheet in the side bar. It follows the active craft script and keeps showing the last one while
 * something else is active. The page asks, the extension answers; the last answer wins. While the server
 * starts there is no answer, and the page keeps what it shows.
 */
export class SheetView implements vscode.WebviewViewProvider, vscode.Disposable {
  static readonly id = 'propsoff.buildSheet';
  private view: vscode.WebviewView | undefined;
  /** Whether the page has asked: what is sent before would come before its state. */
  private isListening = false;
  private shown: vscode.Uri | undefined;
  /** What the script in view was last handed over with. */
  private readonly handed = new WatchedRecord('handed', () => void this.refresh());
  private readonly sent = new SentPieces();
  /** Counts requests, so that a late answer never replaces a newer one. */
  private asked = 0;
  private readonly trial: ValueTrial;
  private readonly disposables: vscode.Disposable[];

  constructor(
    private readonly context: vscode.ExtensionContext,
    private readonly client: Client,
    private readonly said: RecordingsSaid,
  ) {
    this.shown = activeScript()?.document.uri;
    this.trial = new ValueTrial(client, (shown) => this.post({ kind: 'trial', shown }));
    this.disposables = [
      client.onChecked((uri) => this.checked(uri)),
      client.onStateChanged(() => void this.refresh()),
      said.onChanged(() => this.post({ kind: 'recordings', said: said.all() })),
      vscode.window.onDidChangeActiveTextEditor(() => void this.follow()),
      vscode.window.onDidChangeTextEditorSelection(() => void this.sendCursor()),
      vscode.workspace.onDidCloseTextDocument(({ uri }) => this.closed(uri)),
    ];
  }

  resolveWebviewView(view: vscode.WebviewView): void {
    this.view = view;
    this.isListening = false;
    const media = vscode.Uri.joinPath(this.context.extensionUri, 'dist');
    view.webview.options = { enableScripts: true, localResourceRoots: [media] };
    const page = { name: 'sheet', title: vscode.l10n.t('Build Sheet') } as const;
    view.webview.html = ownPage(view.webview, media, newNonce(), page);
    view.webview.onDidReceiveMessage((message: FromSheet) => this.received(message));
    // A hidden page is gone; a new one says when it listens.
    view.onDidChangeVisibility(() => {
      this.isListening &&= view.visible;
    });
    view.onDidDispose(() => {
      this.view = undefined;
      this.isListening = false;
    });
  }

  dispose(): void {
    for (const disposable of this.disposables) disposable.dispose();
    this.handed.dispose();
  }

  /** Shows what other values of a setting would do. */
  async tryValue(uri: vscode.Uri, setting: SettingToTry): Promise<void> {
    await vscode.commands.executeCommand(`${SheetView.id}.focus`);
    await this.trial.start(uri, setting);
  }

  private checked(uri: vscode.Uri): void {
    if (isSame(uri, this.trial.uri)) void this.trial.refresh();
    if (isSame(uri, this.shown)) void this.refresh();
    else if (isSame(uri, activeScript()?.document.uri)) void this.follow();
  }

  /** Shows the active script; but a craft stays while the pilot works on a part that crafts include. */
  private async follow(): Promise<void> {
    const uri = activeScript()?.document.uri;
    if (uri === undefined || isSame(uri, this.shown)) return;
    const summary = await this.client.request(summaryRequest, about(uri));
    if (!isSame(uri, activeScript()?.document.uri)) return;
    if (summary !== null && summary.readAs !== 'whole' && isOpen(this.shown)) return;
    this.shown = uri;
    await this.refresh();
  }

  private closed(uri: vscode.Uri): void {
    if (isSame(uri, this.trial.uri)) this.trial.leave();
    if (!isSame(uri, this.shown)) return;
    this.shown = activeScript()?.document.uri;
    void this.refresh();
  }

  private async refresh(): Promise<void> {
    if (!this.isListening) return;
    this.asked += 1;
    const mine = this.asked;
    const { shown } = this;
    const sheet = shown === undefined ? null : await this.sheetOf(shown);
    if (mine !== this.asked) return;
    if (sheet !== null && shown !== undefined)
      this.post({ kind: 'sheet', sheet: this.sent.of(sheet), uri: shown.toString() });
    else if (shown === undefined) this.post({ kind: 'nothing', state: noScript });
    else if (this.client.state === 'stopped') this.post({ kind: 'nothing', state: stopped });
  }

  private async sheetOf(shown: vscode.Uri) {
    const handed = await this.handed.of(shown);
    return this.client.request(sheetRequest, { ...about(shown), handed });
  }

  /** An answer about a sheet that has been replaced meanwhile is of no use. */
  private async narrow(): Promise<void> {
    const { shown, asked } = this;
    const narrowing = shown === undefined ? null : await this.client.request(narrowingRequest, about(shown));
    if (narrowing !== null && asked === this.asked) this.post({ kind: 'narrowing', narrowing });
  }

  /** Lights up on the page what the cursor's line has to do with. */
  private async sendCursor(): Promise<void> {
    const editor = activeScript();
    if (editor === undefined || !this.isListening) return;
    const { uri } = editor.document;
    const position = editor.selection.active;
    const here = await this.client.request(setHereRequest, aboutPlace(uri, position));
    if (!editor.selection.active.isEqual(position)) return;
    const parameters = here === null || here === undefined ? [] : [here.parameter, here.path];
    this.post({ kind: 'cursor', place: { uri: uri.toString(), line: position.line, parameters } });
  }

  private post(message: ToSheet): void {
    if (this.isListening) void this.view?.webview.postMessage(message);
  }

  private async received(message: FromSheet): Promise<void> {
    switch (message.kind) {
      case 'ready':
        this.isListening = true;
        this.sent.forget();
        this.post({ kind: 'state', state: pageState(this.context.workspaceState.get(stateKey)) });
        this.post({ kind: 'recordings', said: this.said.all() });
        await this.refresh();
        await this.trial.refresh();
        return this.sendCursor();
      case 'state':
        return this.context.workspaceState.update(stateKey, message.state);
      case 'go':
        return goTo(message.target);
      case 'pack':
        return this.shown === undefined
          ? undefined
          : this.client.notify(packInViewNotification, { uri: this.shown.toString(), pack: message.pack });
      case 'try':
        return this.shown === undefined
          ? undefined
          : this.trial.start(this.shown, { path: message.parameter, pack: null }, message.to);
      case 'note-flight':
        return noteFlight(this.client, this.shown);
      case 'open-recording':
        return openRecording(this.context, this.client, this.said, message.uri);
      case 'find-value':
        return findValue(this.context, this.client, this.shown);
      case 'find-channels':
        return findChannels(this.client, this.shown);
      case 'narrow':
        return this.narrow();
      case 'write-lines':
        return this.shown === undefined ? undefined : writeLines(this.client, this.shown, message.paths);
      case 'try-value':
        return this.trial.change(message.to);
      case 'write':
        return this.trial.write();
      case 'leave':
        return this.trial.leave();
      case 'way':
        return goWay(message.command);
    }
  }
}

function isSame(one: vscode.Uri, other: vscode.Uri | undefined): boolean {
  return one.toString() === other?.toString();
}

function isOpen(uri: vscode.Uri | undefined): boolean {
  return vscode.workspace.textDocuments.some((document) => isSame(document.uri, uri));
}
