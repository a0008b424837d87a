import type * as vscode from 'vscode';
import { LanguageClient, TransportKind } from 'vscode-languageclient/node';
import type { Engine } from './engine';
import { startPropsoff } from './start';

let engine: Engine | undefined;

/** Called by the editor when a craft script is opened or a command is run. The server is a process of its own. */
export async function activate(context: vscode.ExtensionContext): Promise<void> {
  const server = { module: context.asAbsolutePath('dist/server.js'), transport: TransportKind.ipc };
  engine = await startPropsoff(
    context,
    (options) => new LanguageClient('propsoff', 'Propsoff', { run: server, debug: server }, options),
  );
}

export async function deactivate(): Promise<void> {
  await engine?.stop();
}
