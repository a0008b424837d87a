import * as vscode from 'vscode';
import { LanguageClient } from 'vscode-languageclient/browser';
import type { Engine } from './engine';
import { startPropsoff } from './start';

/** What a browser gives to start the server in. */
declare const Worker: new (url: string) => object;

let engine: Engine | undefined;

/** Called by an editor that runs in a browser. The server is a worker beside the extension. */
export async function activate(context: vscode.ExtensionContext): Promise<void> {
  const server = vscode.Uri.joinPath(context.extensionUri, 'dist', 'web', 'server.js');
  engine = await startPropsoff(
    context,
    (options) => new LanguageClient('propsoff', 'Propsoff', new Worker(server.toString(true)), options),
  );
}

export async function deactivate(): Promise<void> {
  await engine?.stop();
}
