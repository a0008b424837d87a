import { PassThrough } from 'node:stream';
import { createConnection } from 'vscode-languageserver/node';
import {
  createProtocolConnection,
  InitializedNotification,
  InitializeRequest,
  LogMessageNotification,
  type ProtocolConnection,
  RegistrationRequest,
  StreamMessageReader,
  StreamMessageWriter,
} from 'vscode-languageserver-protocol/node';
import { NodeFiles } from '../../../server/src/file-system/node-files';
import { EditorFiles } from '../../../server/src/lsp/documents/editor-files';
import { FilesByScheme } from '../../../server/src/lsp/documents/files-by-scheme';
import { serve } from '../../../server/src/lsp/server';
import { LifeCycle } from '../../../server/src/lsp/transport/life-cycle';
import { testBundle } from '../../support/catalog';
import { ownClient } from '../../support/server';

/** The server in this process, over two streams; what it logs as an error is kept. */
export interface InProcessServer {
  readonly client: ProtocolConnection;
  readonly errors: string[];
}

let running: Promise<InProcessServer> | null = null;

/** One server for all inputs: what an input leaves behind must not matter to the next one. */
export function inProcessServer(): Promise<InProcessServer> {
  running ??= start();
  return running;
}

async function start(): Promise<InProcessServer> {
  const [toServer, toClient] = [new PassThrough(), new PassThrough()];
  const writer = new StreamMessageWriter(toClient);
  const connection = createConnection(new StreamMessageReader(toServer), writer, {
    messageStrategy: new LifeCycle(writer),
  });
  const files = new FilesByScheme(new NodeFiles([]), new EditorFiles(connection));
  serve(connection, testBundle, files);
  const client = createProtocolConnection(
    new StreamMessageReader(toClient),
    new StreamMessageWriter(toServer),
  );
  const errors: string[] = [];
  client.onNotification(LogMessageNotification.type, ({ message }) => void errors.push(message));
  client.onRequest(RegistrationRequest.type, () => undefined);
  client.listen();
  await client.sendRequest(InitializeRequest.type, {
    processId: null,
    rootUri: null,
    workspaceFolders: null,
    capabilities: ownClient,
  });
  await client.sendNotification(InitializedNotification.type, {});
  return { client, errors };
}
