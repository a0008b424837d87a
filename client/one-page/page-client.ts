import { LSPClient } from '@codemirror/lsp-client';
import type { CancellationToken } from 'vscode';
import type { Diagnostic } from 'vscode-languageclient';
import type { URI } from 'vscode-uri';
import { checkedNotification, type OwnAbilities } from '../../server/src/lsp/files-protocol';
import type { OwnNotification, OwnRequest } from '../../server/src/lsp/own-message';
import { type Client, type ClientLog, settled } from '../src/client';
import { offerFiles } from '../src/editor-files';
import { EventEmitter, Uri } from './host/values';
import { OpenWorkspace } from './open-workspace';
import type { OpenText, Texts } from './texts';
import { Wire } from './wire';

/** The server may come back this often in three minutes before it is left alone. */
const mostRestarts = 4;

export interface FileDiagnostics {
  readonly uri: string;
  readonly diagnostics: readonly Diagnostic[];
}

interface PageClientNeeds {
  readonly texts: () => Texts;
  readonly opened: (uri: string) => Promise<OpenText | null>;
  readonly newWorker: () => Promise<Worker>;
  readonly folder: URI;
  readonly log: ClientLog;
  readonly sanitize: (html: string) => string;
}

/** The language server in its worker, asked by the editor component and by what our extension is made of. */
export class PageClient implements Client {
  readonly wire = new Wire();
  readonly lsp: LSPClient;
  readonly log: ClientLog;
  private readonly checkedEmitter = new EventEmitter<URI>();
  readonly onChecked = this.checkedEmitter.event as Client['onChecked'];
  private readonly hoveredEmitter = new EventEmitter<void>();
  readonly onHovered = this.hoveredEmitter.event as Client['onHovered'];
  private readonly stateEmitter = new EventEmitter<void>();
  readonly onStateChanged = this.stateEmitter.event as Client['onStateChanged'];
  private readonly fileEmitter = new EventEmitter<URI>();
  readonly onFileChanged = this.fileEmitter.event;
  private readonly foundEmitter = new EventEmitter<FileDiagnostics>();
  readonly onFound = this.foundEmitter.event;
  state: Client['state'] = 'starting';
  private restarts: number[] = [];
  private progressTokens = 0;
  private readonly progress = new Map<string, (share: number, doing: string) => void>();

  constructor(private readonly needs: PageClientNeeds) {
    this.log = needs.log;
    const propsoff: OwnAbilities = { checked: true, files: true, commands: true };
    this.lsp = new LSPClient({
      rootUri: needs.folder.toString(),
      timeout: 60_000,
      workspace: (client) => new OpenWorkspace(client, needs.texts, needs.opened),
      sanitizeHTML: needs.sanitize,
      extensions: [{ clientCapabilities: capabilities(propsoff) }],
    });
    this.listen();
  }

  async start(): Promise<void> {
    this.setState('starting');
    try {
      const worker = await this.needs.newWorker();
      this.wire.start(worker, (why) => this.failed(why));
      this.lsp.connect(this.wire);
      await this.lsp.initializing;
      this.setState('running');
    } catch (error) {
      this.log.info(`the checks did not start: ${String(error)}`);
      this.setState('stopped');
    }
  }

  async startAgain(): Promise<void> {
    this.wire.stop();
    this.lsp.disconnect();
    await this.start();
  }

  async request<P, R>(type: OwnRequest<P, R>, params: P, token?: CancellationToken): Promise<R | null> {
    return this.ask<R>(type.method, params, token);
  }

  /** Of the protocol's own requests too; null if the server is not there, or will not answer. */
  async ask<R>(method: string, params: unknown, token?: CancellationToken): Promise<R | null> {
    await settled(this);
    if (this.state !== 'running') return null;
    this.lsp.sync();
    try {
      return await this.wire.request<R>(method, params, token);
    } catch (error) {
      this.log.info(`no answer: ${String(error)}`);
      return null;
    }
  }

  async requestWithProgress<P extends { readonly workDoneToken?: string | number }, R>(
    type: OwnRequest<P, R>,
    params: P,
    token: CancellationToken,
    onProgress: (share: number, doing: string) => void,
  ): Promise<R | null> {
    this.progressTokens += 1;
    const workDoneToken = `page-${this.progressTokens}`;
    this.progress.set(workDoneToken, onProgress);
    try {
      return await this.request(type, { ...params, workDoneToken }, token);
    } finally {
      this.progress.delete(workDoneToken);
    }
  }

  async notify<P>(type: OwnNotification<P>, params: P): Promise<void> {
    this.lsp.sync();
    this.wire.notify(type.method, params);
  }

  opened(text: OpenText): void {
    this.workspace.files = [...this.workspace.files, text];
    this.lsp.didOpen(text);
  }

  closed(uri: string): void {
    if (this.workspace.getFile(uri) === null) return;
    this.workspace.files = this.workspace.files.filter((file) => file.uri !== uri);
    this.lsp.didClose(uri);
  }

  private get workspace(): OpenWorkspace {
    return this.lsp.workspace as OpenWorkspace;
  }

  /** A file was written, made or taken away. */
  fileChanged(uri: string, type: 'made' | 'changed' | 'gone'): void {
    this.fileEmitter.fire(Uri.parse(uri));
    const kind = { made: 1, changed: 2, gone: 3 }[type];
    if (this.state === 'running')
      this.wire.notify('workspace/didChangeWatchedFiles', { changes: [{ uri, type: kind }] });
  }

  private listen(): void {
    const { wire } = this;
    offerFiles(wire);
    const nothing = () => null;
    for (const method of [
      'client/registerCapability',
      'client/unregisterCapability',
      'window/workDoneProgress/create',
    ])
      wire.onRequest({ method }, nothing);
    wire.onNotification<{ uri: string }>(checkedNotification, ({ uri }) =>
      this.checkedEmitter.fire(Uri.parse(uri)),
    );
    wire.onNotification<FileDiagnostics>({ method: 'textDocument/publishDiagnostics' }, (found) =>
      this.foundEmitter.fire(found),
    );
    wire.onNotification<{ message: string }>({ method: 'window/logMessage' }, ({ message }) =>
      this.log.info(message),
    );
    wire.onNotification<{ token: string; value: ProgressStep }>(
      { method: '$/progress' },
      ({ token, value }) => {
        if (value.kind !== 'end')
          this.progress.get(token)?.((value.percentage ?? 0) / 100, value.message ?? '');
      },
    );
  }

  private setState(state: Client['state']): void {
    this.state = state;
    this.stateEmitter.fire();
  }

  /** Comes back after it failed, but never in a loop. */
  private failed(why: string): void {
    this.log.info(`the checks failed: ${why}`);
    const now = Date.now();
    this.restarts = [...this.restarts.filter((at) => now - at < 180_000), now];
    this.lsp.disconnect();
    if (this.restarts.length <= mostRestarts) void this.start();
    else this.setState('stopped');
  }
}

interface ProgressStep {
  readonly kind: 'begin' | 'report' | 'end';
  readonly percentage?: number;
  readonly message?: string;
}

function capabilities(propsoff: OwnAbilities) {
  return {
    textDocument: {
      publishDiagnostics: { versionSupport: true, relatedInformation: true },
      codeAction: { codeActionLiteralSupport: { codeActionKind: { valueSet: ['quickfix', 'refactor'] } } },
    },
    workspace: {
      workspaceEdit: { documentChanges: true },
      didChangeWatchedFiles: { dynamicRegistration: true },
    },
    experimental: { propsoff },
  };
}
