import * as vscode from 'vscode';
import { LanguageClient } from 'vscode-languageclient/browser';
import type { EditorClient } from './editor-client';
import { startPropsoff } from './start';
import { type ServerWorker, workerTransports } from './worker-transports';

/** What a browser gives to start the server in. */
declare const Worker: new (url: string) => ServerWorker;

let client: EditorClient | undefined;

/** Called by an editor that runs in a browser. The server is a worker beside the extension, made anew if it fails. */
export async function activate(context: vscode.ExtensionContext): Promise<void> {
  const dist = vscode.Uri.joinPath(context.extensionUri, 'dist');
  const program = vscode.Uri.joinPath(dist, 'web', 'server.js').toString(true);
  client = await startPropsoff(context, (options) => {
    const log = options.outputChannel ?? { appendLine: () => undefined };
    const started = async () => {
      const catalog = await vscode.workspace.fs.readFile(vscode.Uri.joinPath(dist, 'catalog.json'));
      const worker = new Worker(program);
      worker.postMessage(new TextDecoder().decode(catalog));
      return workerTransports(worker, log);
    };
    return new LanguageClient('propsoff', 'Propsoff', started, options);
  });
}

export async function deactivate(): Promise<void> {
  await client?.stop();
}
