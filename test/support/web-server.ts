import { readFileSync } from 'node:fs';
import { createContext, runInContext } from 'node:vm';
import {
  AbstractMessageReader,
  AbstractMessageWriter,
  createProtocolConnection,
  type DataCallback,
  type Diagnostic,
  DidOpenTextDocumentNotification,
  type Disposable,
  InitializedNotification,
  InitializeRequest,
  type Message,
  type ProtocolConnection,
  PublishDiagnosticsNotification,
} from 'vscode-languageserver-protocol/node';
import { built } from './built';
import { ownClient } from './server';

class Reader extends AbstractMessageReader {
  private callback: DataCallback = () => undefined;

  listen(callback: DataCallback): Disposable {
    this.callback = callback;
    return { dispose: () => undefined };
  }

  take(message: Message): void {
    this.callback(message);
  }
}

class Writer extends AbstractMessageWriter {
  constructor(private readonly send: (message: Message) => void) {
    super();
  }

  async write(message: Message): Promise<void> {
    this.send(message);
  }

  end(): void {
    // Nothing is kept open.
  }
}

interface WorkerScope {
  onmessage?: (event: { readonly data: unknown }) => void;
  [name: string]: unknown;
}

/** Only what a web worker has: what is missing here is what Node would have added. */
function workerScope(post: (message: Message) => void): WorkerScope {
  const names = [
    'setTimeout',
    'clearTimeout',
    'queueMicrotask',
    'TextEncoder',
    'TextDecoder',
    'URL',
  ] as const;
  const given = Object.fromEntries(names.map((name) => [name, globalThis[name]]));
  // Only of faults is told this way, and there are none here.
  const scope: WorkerScope = { ...given, console, addEventListener: () => undefined, postMessage: post };
  scope.self = scope;
  return scope;
}

/** The server's worker as it ships, run with what a worker has and nothing of Node's. */
export class WebServer {
  readonly connection: ProtocolConnection;
  private readonly found = new Map<string, readonly Diagnostic[]>();
  private wake: () => void = () => undefined;

  constructor() {
    const reader = new Reader();
    // A message is copied on its way between threads, and comes in a turn of its own.
    const copied = (message: unknown) => structuredClone(message) as Message;
    const scope = workerScope((message) => {
      const data = copied(message);
      setImmediate(() => reader.take(data));
    });
    const writer = new Writer((message) => {
      const data = copied(message);
      setImmediate(() => scope.onmessage?.({ data }));
    });
    this.connection = createProtocolConnection(reader, writer);
    this.connection.onNotification(PublishDiagnosticsNotification.type, ({ uri, diagnostics }) => {
      this.found.set(uri, diagnostics);
      this.wake();
    });
    this.connection.listen();
    runInContext(readFileSync(built('web/server.js'), 'utf8'), createContext(scope));
    // What comes first is the catalogue, as our client sends it.
    scope.onmessage?.({ data: readFileSync(built('catalog.json'), 'utf8') });
  }

  async initialize(folder: string): Promise<void> {
    await this.connection.sendRequest(InitializeRequest.type, {
      processId: null,
      rootUri: null,
      workspaceFolders: [{ uri: folder, name: 'work' }],
      capabilities: ownClient,
    });
    await this.connection.sendNotification(InitializedNotification.type, {});
  }

  async open(uri: string, text: string): Promise<void> {
    const textDocument = { uri, languageId: 'craft-script', version: 1, text };
    await this.connection.sendNotification(DidOpenTextDocumentNotification.type, { textDocument });
  }

  /** What was last found in a script, as soon as it is what is wanted; the test's own limit ends the wait. */
  async pushed(uri: string, isWanted: (found: readonly Diagnostic[]) => boolean) {
    for (;;) {
      const last = this.found.get(uri);
      if (last !== undefined && isWanted(last)) return last;
      await new Promise<void>((resolve) => {
        this.wake = resolve;
      });
    }
  }
}
