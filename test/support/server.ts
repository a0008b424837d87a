import assert from 'node:assert/strict';
import { type ChildProcessWithoutNullStreams, spawn } from 'node:child_process';
import { once } from 'node:events';
import {
  type ClientCapabilities,
  createProtocolConnection,
  DidChangeTextDocumentNotification,
  DidChangeWatchedFilesNotification,
  DidChangeWorkspaceFoldersNotification,
  DidCloseTextDocumentNotification,
  DidOpenTextDocumentNotification,
  ExitNotification,
  type FileChangeType,
  InitializedNotification,
  type InitializeParams,
  InitializeRequest,
  type InitializeResult,
  LogMessageNotification,
  type ProtocolConnection,
  PublishDiagnosticsNotification,
  type PublishDiagnosticsParams,
  type Registration,
  RegistrationRequest,
  ShutdownRequest,
  StreamMessageReader,
  StreamMessageWriter,
  type TextDocumentContentChangeEvent,
} from 'vscode-languageserver-protocol/node';
import type { OwnAbilities } from '../../server/src/lsp/files-protocol';
import { summaryRequest } from '../../server/src/lsp/protocol';
import { built } from './built';

/** What a client of today can do, as far as answers differ by it; findings are pushed to it. */
export const ableClient: ClientCapabilities = {
  general: { positionEncodings: ['utf-16'] },
  workspace: {
    workspaceFolders: true,
    workspaceEdit: { documentChanges: true },
    didChangeWatchedFiles: { dynamicRegistration: true },
  },
  textDocument: {
    publishDiagnostics: { relatedInformation: true, versionSupport: true },
    hover: { contentFormat: ['markdown', 'plaintext'] },
    completion: { completionItem: { snippetSupport: true, documentationFormat: ['markdown'] } },
    codeAction: { codeActionLiteralSupport: { codeActionKind: { valueSet: [] } }, isPreferredSupport: true },
    definition: { linkSupport: true },
    documentLink: { tooltipSupport: true },
    documentSymbol: { hierarchicalDocumentSymbolSupport: true },
    rename: { prepareSupport: true },
  },
};

/** The same client counting characters in another way. */
export function countingIn(...encodings: string[]): ClientCapabilities {
  return { ...ableClient, general: { positionEncodings: encodings } };
}

/** The same client asking for the edits of an action once it is picked. */
export const resolvingClient: ClientCapabilities = {
  ...ableClient,
  textDocument: {
    ...ableClient.textDocument,
    codeAction: {
      ...ableClient.textDocument?.codeAction,
      dataSupport: true,
      resolveSupport: { properties: ['edit'] },
    },
  },
};

const own: OwnAbilities = { checked: true, files: true, commands: true };

/** The same client when it is our own: it takes our messages beside those of the protocol. */
export const ownClient: ClientCapabilities = { ...ableClient, experimental: { propsoff: own } };

/** The same client asking for findings. */
export const askingClient: ClientCapabilities = {
  ...ableClient,
  textDocument: { ...ableClient.textDocument, diagnostic: {} },
  workspace: { ...ableClient.workspace, diagnostics: { refreshSupport: true } },
};

export interface StartOptions {
  readonly capabilities?: ClientCapabilities;
  /** Anything else to initialize with; no folders without it. */
  readonly params?: Partial<InitializeParams>;
  /** The workspace's folders, as URIs. */
  readonly folders?: readonly string[];
  readonly nodeArguments?: readonly string[];
}

/** The server that ships, in a process of its own, with a client's end of the connection. */
export class TestServer {
  readonly connection: ProtocolConnection;
  readonly published: PublishDiagnosticsParams[] = [];
  readonly log: string[] = [];
  /** What the server asked to be told beside what its answer to initialize says. */
  readonly registered: Registration[] = [];
  /** Everything that came out of standard output. */
  readonly output: Buffer[] = [];
  readonly errors: Buffer[] = [];
  private initializeResult: InitializeResult | null = null;
  private readonly wakers = new Set<() => void>();
  private readonly opened = new Set<string>();

  constructor(
    readonly process: ChildProcessWithoutNullStreams,
    /** When the process is gone and all that it wrote has been read. */
    private readonly closed: Promise<unknown> = once(process, 'close'),
  ) {
    process.stdout.on('data', (chunk: Buffer) => this.output.push(chunk));
    process.stderr.on('data', (chunk: Buffer) => this.errors.push(chunk));
    this.connection = createProtocolConnection(
      new StreamMessageReader(process.stdout),
      new StreamMessageWriter(process.stdin),
    );
    this.connection.onNotification(PublishDiagnosticsNotification.type, (params) => {
      this.published.push(params);
      for (const wake of [...this.wakers]) wake();
    });
    this.connection.onNotification(LogMessageNotification.type, ({ message }) => void this.log.push(message));
    this.connection.onRequest(RegistrationRequest.type, ({ registrations }) => {
      this.registered.push(...registrations);
    });
    this.connection.listen();
  }

  get initialized(): InitializeResult {
    if (this.initializeResult === null) throw new Error('initialize has not been answered');
    return this.initializeResult;
  }

  async initialize({ capabilities = ableClient, params = {}, folders }: StartOptions): Promise<void> {
    const workspaceFolders = folders?.map((uri) => ({ uri, name: uri })) ?? null;
    this.initializeResult = await this.connection.sendRequest(InitializeRequest.type, {
      processId: null,
      rootUri: null,
      workspaceFolders,
      capabilities,
      ...params,
    });
    await this.connection.sendNotification(InitializedNotification.type, {});
  }

  async open(uri: string, text: string, version = 1, languageId = 'craft-script'): Promise<void> {
    const textDocument = { uri, languageId, version, text };
    this.opened.add(uri);
    await this.connection.sendNotification(DidOpenTextDocumentNotification.type, { textDocument });
  }

  async change(
    uri: string,
    version: number,
    ...contentChanges: TextDocumentContentChangeEvent[]
  ): Promise<void> {
    const params = { textDocument: { uri, version }, contentChanges };
    await this.connection.sendNotification(DidChangeTextDocumentNotification.type, params);
  }

  async close(uri: string): Promise<void> {
    this.opened.delete(uri);
    await this.connection.sendNotification(DidCloseTextDocumentNotification.type, { textDocument: { uri } });
  }

  async foldersChanged(added: readonly string[], removed: readonly string[]): Promise<void> {
    const [more, gone] = [added, removed].map((uris) => uris.map((uri) => ({ uri, name: uri })));
    await this.connection.sendNotification(DidChangeWorkspaceFoldersNotification.type, {
      event: { added: more ?? [], removed: gone ?? [] },
    });
  }

  async filesChanged(...changes: { readonly uri: string; readonly type: FileChangeType }[]): Promise<void> {
    await this.connection.sendNotification(DidChangeWatchedFilesNotification.type, { changes });
  }

  /** What was last sent for a script, as soon as it is what is wanted; the test's own limit ends the wait. */
  async pushed(
    uri: string,
    isWanted: (params: PublishDiagnosticsParams) => boolean = () => true,
  ): Promise<PublishDiagnosticsParams> {
    for (;;) {
      const last = this.published.findLast((params) => params.uri === uri);
      if (last !== undefined && isWanted(last)) return last;
      await this.nextPush();
    }
  }

  /** Findings of a version, which must come with that version. */
  async pushedFor(uri: string, version: number): Promise<PublishDiagnosticsParams> {
    return this.pushed(uri, (params) => params.version === version);
  }

  /** Closes all that is open, and waits until that is through; gives whether nothing is left of what it was used for. */
  async isLeftAsItWas(folders: readonly string[]): Promise<boolean> {
    const isWell = () => this.process.exitCode === null && this.log.length + this.errors.length === 0;
    if (!isWell()) return false;
    const [uri = 'untitled:none'] = this.opened;
    for (const one of this.opened) await this.close(one);
    await this.foldersChanged([], folders);
    const left = await this.connection.sendRequest(summaryRequest, { textDocument: { uri } });
    return left === null && isWell();
  }

  /** The same server for another test, which has a connection of its own: nobody answers it for the test before. */
  forAnother(): TestServer {
    this.connection.dispose();
    const { stdin, stdout, stderr } = this.process;
    for (const stream of [stdout, stderr]) stream.removeAllListeners('data');
    for (const stream of [stdin, stdout, stderr]) stream.setMaxListeners(0);
    const next = new TestServer(this.process, this.closed);
    next.initializeResult = this.initializeResult;
    next.registered.push(...this.registered);
    return next;
  }

  /** Ends the server as a client should; gives the exit code. */
  async shutDown(): Promise<number | null> {
    await this.connection.sendRequest(ShutdownRequest.type);
    await this.connection.sendNotification(ExitNotification.type);
    return this.exitCode();
  }

  async exitCode(): Promise<number | null> {
    await this.closed;
    return this.process.exitCode;
  }

  private nextPush(): Promise<void> {
    return new Promise((resolve, reject) => {
      const died = () => reject(new Error(`the server ended: ${Buffer.concat(this.errors)}`));
      const wake = () => {
        this.wakers.delete(wake);
        this.process.off('exit', died);
        resolve();
      };
      this.wakers.add(wake);
      this.process.once('exit', died);
    });
  }
}

/**
 * For tests of what a server says. Beside an editor it keeps its heap small, and has hours in which it pays to compile
 * code for speed; in a test both cost a fifth of its time on a processor. Others run it as it ships.
 */
export const forTests: readonly string[] = [
  '--min-semi-space-size=16',
  // Other Nodes than 20 complain of the word.
  ...(process.versions.node.startsWith('20.') ? ['--interrupt-budget=500000'] : []),
];

function begin(nodeArguments: readonly string[]): TestServer {
  return new TestServer(spawn(process.execPath, [...nodeArguments, built('server.js'), '--stdio']));
}

async function end(server: TestServer): Promise<void> {
  server.connection.dispose();
  server.process.kill('SIGKILL');
  await server.exitCode();
}

/** Starts the server without initializing it; its process is gone afterwards, whatever happens. */
export async function withProcess<T>(
  run: (server: TestServer) => Promise<T>,
  nodeArguments: readonly string[] = [],
): Promise<T> {
  const server = begin(nodeArguments);
  try {
    return await run(server);
  } finally {
    await end(server);
  }
}

/**
 * One server for the tests of a `describe` that are about a document alone: each opens it anew, and after each it is
 * closed and nothing of it is left. A start takes longer than most of them. What is about the server has one of its own.
 */
export function oneServerFor(uri: string, options: StartOptions = {}): () => TestServer {
  let server: TestServer | null = null;
  const running = () => server ?? assert.fail('it runs from the first test to the last');
  before(async () => {
    server = begin([...forTests, ...(options.nodeArguments ?? [])]);
    await server.initialize(options);
  });
  afterEach(async () => {
    const { connection, log, published } = running();
    assert.deepEqual(log, [], 'nothing of ours failed');
    await running().close(uri);
    // What the server sent of it comes before this answer.
    assert.equal(await connection.sendRequest(summaryRequest, { textDocument: { uri } }), null);
    published.length = 0;
  });
  after(() => end(running()));
  return running;
}

/** Runs something with an initialized server of its own. */
export async function withOwnServer<T>(
  options: StartOptions,
  run: (server: TestServer) => Promise<T>,
): Promise<T> {
  return withProcess(async (server) => {
    await server.initialize(options);
    return run(server);
  }, options.nodeArguments);
}

/** Servers that nobody uses now, by what their client can do. */
const idle = new Map<string, TestServer>();

/**
 * Runs something with an initialized server, which may have been used before, for folders that are open no more: a
 * start takes longer than most of what is tried. It is used again if it is left as it was. What is about a server's
 * start or end, or about a message that breaks the protocol, has one of its own.
 */
export async function withServer<T>(
  { capabilities = ableClient, folders = [] }: Pick<StartOptions, 'capabilities' | 'folders'>,
  run: (server: TestServer) => Promise<T>,
): Promise<T> {
  const key = JSON.stringify(capabilities);
  const used = idle.get(key);
  idle.delete(key);
  const server = used?.forAnother() ?? begin(forTests);
  let isKept = false;
  try {
    if (used === undefined) await server.initialize({ capabilities, folders });
    else await server.foldersChanged(folders, []);
    const result = await run(server);
    isKept = !idle.has(key) && (await server.isLeftAsItWas(folders));
    if (isKept) idle.set(key, server);
    return result;
  } finally {
    if (!isKept) await end(server);
  }
}
