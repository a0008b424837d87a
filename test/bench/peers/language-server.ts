import { type ChildProcessWithoutNullStreams, spawn } from 'node:child_process';
import { once } from 'node:events';
import { readFileSync } from 'node:fs';
import {
  type ClientCapabilities,
  CompletionRequest,
  ConfigurationRequest,
  createProtocolConnection,
  type Diagnostic,
  DidChangeConfigurationNotification,
  DidChangeTextDocumentNotification,
  DidOpenTextDocumentNotification,
  DocumentDiagnosticRequest,
  HoverRequest,
  InitializedNotification,
  InitializeRequest,
  type Position,
  type ProtocolConnection,
  PublishDiagnosticsNotification,
  type PublishDiagnosticsParams,
  RegistrationRequest,
  StreamMessageReader,
  StreamMessageWriter,
} from 'vscode-languageserver-protocol/node';

/** A server to measure, and how to ask it. */
export interface ServerOptions {
  readonly name: string;
  readonly command: string;
  readonly args: readonly string[];
  readonly uri: string;
  readonly languageId: string;
  /** It is asked for findings instead of sending them. */
  readonly isPulled?: boolean;
  /** Sent once it has started. */
  readonly settings?: Readonly<Record<string, unknown>>;
  readonly initializationOptions?: unknown;
}

const capabilities: ClientCapabilities = {
  workspace: { configuration: true, didChangeConfiguration: { dynamicRegistration: true } },
  textDocument: {
    publishDiagnostics: { versionSupport: true },
    hover: { contentFormat: ['markdown', 'plaintext'] },
    completion: { completionItem: { snippetSupport: true, documentationFormat: ['markdown'] } },
  },
};

/** A language server in a process of its own with one document, and a client's end of the connection. */
export class LanguageServer {
  private readonly child: ChildProcessWithoutNullStreams;
  private readonly connection: ProtocolConnection;
  private version = 1;
  private onPublished: (params: PublishDiagnosticsParams) => void = () => {};
  private onEnded: (error: Error) => void = () => {};

  constructor(readonly options: ServerOptions) {
    this.child = spawn(options.command, options.args);
    this.child.stderr.resume();
    this.child.once('exit', () => this.onEnded(new Error(`${options.name} has ended`)));
    this.connection = createProtocolConnection(
      new StreamMessageReader(this.child.stdout),
      new StreamMessageWriter(this.child.stdin),
    );
    this.connection.onNotification(PublishDiagnosticsNotification.type, (params) => {
      if (params.uri === options.uri) this.onPublished(params);
    });
    this.connection.onRequest(ConfigurationRequest.type, ({ items }) =>
      items.map(({ section }) => (section === undefined ? null : (options.settings?.[section] ?? null))),
    );
    this.connection.onRequest(RegistrationRequest.type, () => {});
    this.connection.listen();
  }

  /** Starts it, opens the document and gives the first findings that are not too few. */
  async open(
    text: string,
    isWanted: (found: readonly Diagnostic[]) => boolean,
  ): Promise<readonly Diagnostic[]> {
    const { uri, languageId, settings, initializationOptions, isPulled } = this.options;
    const client = isPulled === true ? pulling : capabilities;
    const folders = [{ uri: uri.slice(0, uri.lastIndexOf('/')), name: 'bench' }];
    await this.connection.sendRequest(InitializeRequest.type, {
      processId: process.pid,
      rootUri: null,
      workspaceFolders: folders,
      capabilities: client,
      initializationOptions,
    });
    await this.connection.sendNotification(InitializedNotification.type, {});
    if (settings !== undefined)
      await this.connection.sendNotification(DidChangeConfigurationNotification.type, { settings });
    const findings = this.published(({ diagnostics }) => isWanted(diagnostics));
    const textDocument = { uri, languageId, version: this.version, text };
    await this.connection.sendNotification(DidOpenTextDocumentNotification.type, { textDocument });
    if (isPulled !== true) return findings;
    for (;;) {
      const items = await this.pulled();
      if (isWanted(items)) return items;
    }
  }

  /** Puts a text in place of so many characters; gives the findings of the text as it is then. */
  async edit(at: Position, length: number, text: string): Promise<readonly Diagnostic[]> {
    const findings = this.options.isPulled === true ? null : this.nextFindings();
    this.send(at, length, text);
    return findings ?? this.pulled();
  }

  /** Edits, and asks for a hover in the same breath; the findings are awaited as well, untimed. */
  async hoverAfterEdit(at: Position, length: number, text: string, hovered: Position) {
    return this.askedAfterEdit(at, length, text, () =>
      this.connection.sendRequest(HoverRequest.type, {
        textDocument: { uri: this.options.uri },
        position: hovered,
      }),
    );
  }

  /** Edits, and asks for completion in the same breath. */
  async completeAfterEdit(at: Position, length: number, text: string, completed: Position) {
    return this.askedAfterEdit(at, length, text, () =>
      this.connection.sendRequest(CompletionRequest.type, {
        textDocument: { uri: this.options.uri },
        position: completed,
      }),
    );
  }

  /** The memory that the process holds, MB. */
  memory(): number {
    const status = readFileSync(`/proc/${this.child.pid}/status`, 'utf8');
    return Number(/^VmRSS:\s*(\d+) kB/m.exec(status)?.[1]) / 1000;
  }

  async end(): Promise<void> {
    this.onEnded = () => {};
    this.connection.dispose();
    if (this.child.exitCode !== null) return;
    const ended = once(this.child, 'exit');
    this.child.kill('SIGKILL');
    await ended;
  }

  private async askedAfterEdit<T>(
    at: Position,
    length: number,
    text: string,
    ask: () => Promise<T>,
  ): Promise<{ readonly ms: number; readonly answer: T }> {
    const findings = this.options.isPulled === true ? null : this.nextFindings();
    const start = performance.now();
    this.send(at, length, text);
    const answer = await ask();
    const ms = performance.now() - start;
    await (findings ?? this.pulled());
    return { ms, answer };
  }

  private send(at: Position, length: number, text: string): void {
    this.version += 1;
    const { uri } = this.options;
    const range = { start: at, end: { line: at.line, character: at.character + length } };
    void this.connection.sendNotification(DidChangeTextDocumentNotification.type, {
      textDocument: { uri, version: this.version },
      contentChanges: [{ range, text }],
    });
  }

  /** The next that are sent; where it says of which version they are, those of the version after this one. */
  private nextFindings(): Promise<readonly Diagnostic[]> {
    const wanted = this.version + 1;
    return this.published(({ version }) => version === undefined || version >= wanted);
  }

  private published(isWanted: (params: PublishDiagnosticsParams) => boolean): Promise<readonly Diagnostic[]> {
    return new Promise((resolve, reject) => {
      this.onEnded = reject;
      this.onPublished = (params) => {
        if (isWanted(params)) resolve(params.diagnostics);
      };
    });
  }

  private async pulled(): Promise<readonly Diagnostic[]> {
    const report = await this.connection.sendRequest(DocumentDiagnosticRequest.type, {
      textDocument: { uri: this.options.uri },
    });
    return report.kind === 'full' ? report.items : [];
  }
}

const pulling: ClientCapabilities = {
  ...capabilities,
  textDocument: { ...capabilities.textDocument, diagnostic: { dynamicRegistration: true } },
};
