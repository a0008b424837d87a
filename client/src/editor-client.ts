import * as vscode from 'vscode';
import {
  type BaseLanguageClient,
  CloseAction,
  ErrorAction,
  type LanguageClientOptions,
  type ProgressToken,
  State,
  type StaticFeature,
  WorkDoneProgress,
} from 'vscode-languageclient';
import { checkedNotification, type OwnAbilities } from '../../server/src/lsp/files-protocol';
import type { OwnNotification, OwnRequest } from '../../server/src/lsp/own-message';
import { type Client, settled } from './client';
import { offerFiles } from './editor-files';
import { servedDocuments } from './language';

const { t } = vscode.l10n;

/** How a client is made, and with it a server: as a process, or as a worker in a browser. */
export type NewLanguageClient = (options: LanguageClientOptions) => BaseLanguageClient;

/** The server may come back this often in three minutes before it is left alone. */
const mostRestarts = 4;

/** The language server by the editor's own client of it. */
export class EditorClient implements Client, vscode.Disposable {
  private readonly checkedEmitter = new vscode.EventEmitter<vscode.Uri>();
  readonly onChecked = this.checkedEmitter.event;
  private readonly hoveredEmitter = new vscode.EventEmitter<void>();
  readonly onHovered = this.hoveredEmitter.event;
  private readonly stateEmitter = new vscode.EventEmitter<void>();
  readonly onStateChanged = this.stateEmitter.event;
  readonly log = vscode.window.createOutputChannel('Propsoff', { log: true });
  private languageClient: BaseLanguageClient;
  /** What listens to the client. */
  private listeners: readonly vscode.Disposable[] = [];
  /** How many requests were told of so far. */
  private progressTokens = 0;
  private restarts: number[] = [];
  private isGivenUp = false;
  /** Whether the client is being exchanged for another one. */
  private isChanging = false;

  constructor(private readonly newLanguageClient: NewLanguageClient) {
    this.languageClient = this.connected();
  }

  get state(): 'starting' | 'running' | 'stopped' {
    const { state } = this.languageClient;
    if (this.isChanging || state === State.Starting) return 'starting';
    if (state === State.Running) return 'running';
    return this.isGivenUp ? 'stopped' : 'starting';
  }

  async start(): Promise<void> {
    try {
      await this.languageClient.start();
    } catch (error) {
      this.log.error(`the server did not start: ${String(error)}`);
      this.giveUp(t('Propsoff could not start its checks. The log “Propsoff” says why.'));
    }
  }

  async startAgain(): Promise<void> {
    if (this.isChanging) return;
    this.isChanging = true;
    this.restarts = [];
    this.isGivenUp = false;
    this.stateEmitter.fire();
    const before = this.languageClient;
    for (const listener of this.listeners) listener.dispose();
    try {
      await before.dispose();
    } catch (error) {
      // It is left behind: its process ends by itself once nobody talks to it.
      this.log.warn(`the server before did not end in time: ${String(error)}`);
    }
    // A client that failed to start can't be started another time.
    this.languageClient = this.connected();
    this.isChanging = false;
    await this.start();
  }

  async stop(): Promise<void> {
    if (this.languageClient.needsStop()) await this.languageClient.stop();
  }

  async request<P, R>(
    type: OwnRequest<P, R>,
    params: P,
    token?: vscode.CancellationToken,
  ): Promise<R | null> {
    await settled(this);
    if (this.state !== 'running') return null;
    try {
      // A token that is left out must not be there at all: it would be sent as a parameter.
      return await (token === undefined
        ? this.languageClient.sendRequest<R>(type.method, params)
        : this.languageClient.sendRequest<R>(type.method, params, token));
    } catch (error) {
      this.log.warn(`no answer: ${String(error)}`);
      return null;
    }
  }

  async requestWithProgress<P extends { readonly workDoneToken?: ProgressToken }, R>(
    type: OwnRequest<P, R>,
    params: P,
    token: vscode.CancellationToken,
    onProgress: (share: number, doing: string) => void,
  ): Promise<R | null> {
    this.progressTokens += 1;
    const workDoneToken = `propsoff-${this.progressTokens}`;
    const listening = this.languageClient.onProgress(WorkDoneProgress.type, workDoneToken, (step) => {
      if (step.kind !== 'end') onProgress((step.percentage ?? 0) / 100, step.message ?? '');
    });
    try {
      return await this.request(type, { ...params, workDoneToken }, token);
    } finally {
      listening.dispose();
    }
  }

  async notify<P>(type: OwnNotification<P>, params: P): Promise<void> {
    await this.languageClient.sendNotification(type.method, params);
  }

  dispose(): void {
    const own = [this.log, this.checkedEmitter, this.hoveredEmitter, this.stateEmitter];
    for (const disposable of [...this.listeners, ...own]) disposable.dispose();
  }

  private connected(): BaseLanguageClient {
    const client = this.newLanguageClient(this.clientOptions());
    client.registerFeature(ownMessages);
    this.listeners = [
      ...offerFiles(client),
      client.onNotification(checkedNotification, ({ uri }) =>
        this.checkedEmitter.fire(vscode.Uri.parse(uri)),
      ),
      client.onDidChangeState(({ newState }) => {
        this.log.info(`server: ${State[newState]}`);
        this.stateEmitter.fire();
      }),
    ];
    return client;
  }

  private giveUp(why: string): void {
    this.isGivenUp = true;
    this.stateEmitter.fire();
    void this.offerStart(why);
  }

  private async offerStart(why: string): Promise<void> {
    const [again, log] = [t('Start the Checks Again'), t('Show the Log')];
    const picked = await vscode.window.showErrorMessage(why, again, log);
    if (picked === again) await this.startAgain();
    if (picked === log) this.log.show();
  }

  private clientOptions(): LanguageClientOptions {
    return {
      documentSelector: servedDocuments(),
      outputChannel: this.log,
      middleware: {
        provideHover: async (document, position, token, next) => {
          const hover = await next(document, position, token);
          if (hover) this.hoveredEmitter.fire();
          return hover;
        },
        provideCodeLenses: (document, token, next) =>
          vscode.workspace.getConfiguration('propsoff', document).get('codeLens', true)
            ? next(document, token)
            : [],
      },
      markdown: { isTrusted: false, supportHtml: false },
      errorHandler: {
        error: () => ({ action: ErrorAction.Continue }),
        closed: () => this.closed(),
      },
    };
  }

  /** Restarts a server that died, but never in a loop. */
  private closed() {
    const now = Date.now();
    this.restarts = [...this.restarts.filter((at) => now - at < 180_000), now];
    if (this.restarts.length <= mostRestarts) return { action: CloseAction.Restart };
    this.log.error('the server keeps stopping and is left alone now');
    this.giveUp(t('Propsoff’s checks keep stopping and are off now. The log “Propsoff” says why.'));
    return { action: CloseAction.DoNotRestart, handled: true };
  }
}

/** Tells the server that this client knows its messages beside those of the protocol. */
const ownMessages: StaticFeature = {
  fillClientCapabilities: (capabilities) => {
    const propsoff: OwnAbilities = { checked: true, files: true, commands: true };
    capabilities.experimental = { ...capabilities.experimental, propsoff };
  },
  initialize: () => undefined,
  getState: () => ({ kind: 'static' }),
  clear: () => undefined,
};
